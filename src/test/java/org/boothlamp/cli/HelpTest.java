package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;

/** What the front door and every command say of themselves. */
class HelpTest {

  private static final List<String> COMMANDS =
      List.of(
          "run",
          "demo",
          "check",
          "sign-in",
          "replay",
          "record",
          "bead",
          "reference",
          "report",
          "sync",
          "collect",
          "forget",
          "lamp",
          "calibrate");

  @Test
  void shouldNameEveryCommandAtTheFrontDoor() {
    CommandRun help = CommandRun.of("--help").exits(0);
    for (String command : COMMANDS) {
      assertTrue(help.out().contains("\n  " + command + " "), () -> command + help.out());
    }
    assertTrue(help.out().contains("no safety device"));
    assertTrue(help.out().contains("0 done, 1 it failed, 2 wrong usage or settings"));
    assertEquals("", help.err());
  }

  @ParameterizedTest
  @FieldSource("COMMANDS")
  void shouldExplainEachCommand(String command) {
    CommandRun help = CommandRun.of(command, "--help").exits(0);
    assertTrue(help.out().contains("Usage: boothlamp " + command));
    assertTrue(help.out().contains("Options:"));
    assertTrue(help.out().lines().allMatch(line -> line.length() <= 80), help.out());
    assertEquals("", help.err());
  }

  @ParameterizedTest
  @CsvSource({
    "run, --settings",
    "demo, --keep",
    "check, --settings-only",
    "sign-in, --procedure",
    "replay, --format",
    "replay, --segment",
    "replay, NAME.wav",
    "record, --segment",
    "report, --trainee",
    "report, --database",
    "sync, --status",
    "collect, --into",
    "forget, --settings",
    "lamp, --for",
    "calibrate, voltage"
  })
  void shouldNameTheOptionsOfEachCommand(String command, String option) {
    assertTrue(CommandRun.of(command, "--help").out().contains(option));
  }

  @ParameterizedTest
  @CsvSource({"current, --points", "voltage, --meter-scale", "check, --reference"})
  void shouldExplainTheCommandsOfCalibrate(String command, String option) {
    CommandRun help = CommandRun.of("calibrate", command, "--help").exits(0);
    assertTrue(help.out().contains("Usage: boothlamp calibrate " + command), help.out());
    assertTrue(help.out().contains(option), help.out());
    assertTrue(help.out().lines().allMatch(line -> line.length() <= 80), help.out());
  }

  @Test
  void shouldSayThatCalibratingIsWorkOnLiveCurrent() {
    String help = CommandRun.of("calibrate", "--help").out().replaceAll("\\s+", " ");
    assertTrue(help.contains("local codes come first"), help);
    assertTrue(CommandRun.of("calibrate").exits(2).err().contains("which of its commands?"));
  }

  @Test
  void shouldRefuseAnUnknownCommandWithoutAnAnswer() {
    CommandRun run = CommandRun.of("weld").exits(2);
    assertEquals("", run.out());
    assertTrue(run.err().contains("boothlamp: "));
    assertTrue(run.err().contains("try: boothlamp --help"));
  }

  @Test
  void shouldAskWhichCommandIfNoneIsGiven() {
    CommandRun run = CommandRun.of().exits(2);
    assertTrue(run.err().contains("which command?"));
  }

  @Test
  void shouldRefuseAnUnknownOptionAndPointToTheCommandsHelp() {
    CommandRun run = CommandRun.of("report", "--wall").exits(2);
    assertTrue(run.err().contains("try: boothlamp report --help"), run.err());
  }

  @Test
  void shouldColourHelpOnATerminalOnly() {
    assertTrue(CommandRun.onScreen("--help").out().contains("\u001B["));
    assertFalse(CommandRun.of("--help").out().contains("\u001B["));
  }

  @Test
  void shouldTellItsVersion() {
    assertTrue(CommandRun.of("--version").exits(0).out().startsWith("boothlamp "));
  }
}
