package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import org.boothlamp.report.Colour;
import org.junit.jupiter.api.Test;

/** The option, on the example that ships in config/. */
class CheckHardwareTest {

  /** Settings alone are looked at, so nothing is to be built. */
  private static final Parts NO_PARTS =
      (Parts)
          Proxy.newProxyInstance(
              Parts.class.getClassLoader(),
              new Class<?>[] {Parts.class},
              (proxy, method, arguments) -> {
                throw new IllegalStateException("must not be built: " + method.getName());
              });

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  private String check(String... more) {
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Terminal terminal = new Terminal(stream, stream, false, 100, Colour.PLAIN);
    String[] arguments = new String[4 + more.length];
    arguments[0] = "check";
    arguments[1] = "--settings-only";
    arguments[2] = "--settings";
    arguments[3] = "config/booth.toml";
    System.arraycopy(more, 0, arguments, 4, more.length);
    assertEquals(0, BoothlampCommand.commandLine(NO_PARTS, terminal).execute(arguments));
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void shouldPrintWhatTheExampleCanTellApart() {
    String text = check("--hardware");
    assertTrue(text.contains("note  hardware   the source was not heard"), text);
    assertTrue(text.contains("good  current    0.293 A a count"), text);
    assertTrue(text.contains("good  voltage    0.0244 V a count; -50.0 to 50.0 V"), text);
    assertTrue(text.contains("note  voltage    clips at 50.0 V; an open circuit"), text);
  }

  @Test
  void shouldSayNothingOfHardwareUnlessAsked() {
    assertFalse(check().contains("a count"));
  }
}
