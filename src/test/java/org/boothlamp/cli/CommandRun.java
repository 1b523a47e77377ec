package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.app.Wiring;
import org.boothlamp.report.Colour;

/** A command run in this process, on the real parts unless others are given, and what it said. */
record CommandRun(int exitCode, String out, String err) {

  /** On something that is no terminal. */
  static CommandRun of(Object... arguments) {
    return of(new Wiring(), false, Colour.PLAIN, arguments);
  }

  /** On a terminal that a person watches. */
  static CommandRun onScreen(Object... arguments) {
    return of(new Wiring(), true, Colour.ANSI, arguments);
  }

  /** On parts of the test's own, and something that is no terminal. */
  static CommandRun with(Parts parts, Object... arguments) {
    return of(parts, false, Colour.PLAIN, arguments);
  }

  private static CommandRun of(
      Parts parts, boolean interactive, Colour colour, Object... arguments) {
    String[] words = Arrays.stream(arguments).map(Object::toString).toArray(String[]::new);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Terminal terminal = new Terminal(stream(out), stream(err), interactive, 80, colour);
    int exitCode = BoothlampCommand.commandLine(parts, terminal).execute(words);
    return new CommandRun(
        exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  /** The same, after it has been seen to end with this exit code. */
  CommandRun exits(int expected) {
    assertEquals(expected, exitCode, () -> "out:\n" + out + "err:\n" + err);
    return this;
  }

  /** The JSON objects of the answer, one a line. */
  List<JsonNode> objects() {
    List<JsonNode> objects = new ArrayList<>();
    ObjectMapper mapper = new ObjectMapper();
    for (String line : out.lines().toList()) {
      try {
        objects.add(mapper.readTree(line));
      } catch (IOException e) {
        throw new AssertionError("not JSON: " + line, e);
      }
    }
    return objects;
  }

  /** Those of one kind. */
  List<JsonNode> objects(String kind) {
    return objects().stream().filter(object -> kind.equals(object.path("kind").asText())).toList();
  }
}
