package org.boothlamp;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.boothlamp.app.Wiring;
import org.boothlamp.cli.BoothlampCommand;
import org.boothlamp.cli.Terminal;
import org.boothlamp.report.Colour;

/** One command on the real parts, in this process. */
record CommandLineRun(int exitCode, String out, String err) {

  static CommandLineRun of(Object... arguments) {
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = arguments[i].toString();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Terminal terminal = new Terminal(stream(out), stream(err), false, 80, Colour.PLAIN);
    int exitCode = BoothlampCommand.commandLine(new Wiring(), terminal).execute(words);
    return new CommandLineRun(
        exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
