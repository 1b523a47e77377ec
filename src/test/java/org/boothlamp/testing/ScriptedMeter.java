package org.boothlamp.testing;

import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.DoubleSupplier;
import java.util.function.Function;

/**
 * A meter at the far end of a serial line that answers what a test says. Its thread ends when the
 * line goes away. {@link #heard} may be called from any thread.
 */
public final class ScriptedMeter implements AutoCloseable {

  /** What an identity looks like: maker, model, serial number, firmware. */
  public static final String IDENTITY = "BENCH,BM-1,4711,1.0";

  private final FileInputStream input;
  private final OutputStream output;
  private final List<String> heard = new CopyOnWriteArrayList<>();
  private final Function<String, String> answers;

  /**
   * A meter that is switched on.
   *
   * @param port its end of the line
   * @param answers bytes to send for a command, end of line included; null for silence
   */
  public ScriptedMeter(Path port, Function<String, String> answers) throws IOException {
    this.answers = answers;
    input = new FileInputStream(port.toFile());
    output = new FileOutputStream(port.toFile());
    Thread thread = new Thread(this::listen, "scripted meter");
    thread.setDaemon(true);
    thread.start();
  }

  /** One that says who it is, and answers every other query with a number of its own form. */
  public static Function<String, String> showing(DoubleSupplier value) {
    return command ->
        command.equals("*IDN?")
            ? IDENTITY + "\r\n"
            : command.endsWith("?")
                ? String.format(Locale.ROOT, "%+.7E%n", value.getAsDouble())
                : null;
  }

  private void listen() {
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(input, StandardCharsets.US_ASCII))) {
      String command = reader.readLine();
      while (command != null) {
        heard.add(command);
        String answer = answers.apply(command);
        if (answer != null) {
          output.write(answer.getBytes(StandardCharsets.ISO_8859_1));
        }
        command = reader.readLine();
      }
    } catch (IOException lineIsGone) {
      // a meter whose line is gone is as good as switched off
    }
  }

  /** The commands that came so far. */
  public List<String> heard() {
    return heard;
  }

  @Override
  public void close() throws IOException {
    output.close();
  }
}
