package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lists and withdraws calibrations, and checks what holds. */
class CalibrateCommandsTest {

  private static final LocalDate TODAY = LocalDate.now();

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
    booth.stickProcedure("S-1", "fill");
    booth.write();
  }

  private ChannelScale nominal(Channel channel) {
    return channel.of(BoothSettingsFile.read(booth.settings()).scale());
  }

  private void calibrate(Channel channel, ChannelScale nominal, LocalDate due) {
    try (CalibrationBook book = BoothCalibrations.open(booth.log())) {
      Calibrations.add(
          book,
          Calibrations.head(channel, nominal, TODAY.minusMonths(2)),
          Calibrations.accepted(
              System.currentTimeMillis() - 60_000,
              nominal,
              new ExpandedUncertainty(0.4, 0.002),
              due));
    }
  }

  private CommandRun list(Object... more) {
    Object[] arguments = new Object[4 + more.length];
    arguments[0] = "calibrate";
    arguments[1] = "list";
    arguments[2] = "--settings";
    arguments[3] = booth.settings();
    System.arraycopy(more, 0, arguments, 4, more.length);
    return CommandRun.of(arguments);
  }

  private CommandRun withdraw(Object number, String from, String reason, String technician) {
    return CommandRun.of(
        "calibrate",
        "withdraw",
        number,
        "--from",
        from,
        "--reason",
        reason,
        "--technician",
        technician,
        "--settings",
        booth.settings());
  }

  private String check() {
    return CommandRun.of("check", "--settings-only", "--settings", booth.settings()).exits(0).out();
  }

  @Test
  void shouldListNothingWithoutMakingALog() {
    assertTrue(list().exits(0).out().contains("No calibration yet"));
    assertEquals(List.of(), list("-f", "json").exits(0).objects());
    assertFalse(Files.exists(booth.log()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"show", "certificate"})
  void shouldShowNothingWithoutMakingALog(String command) {
    CommandRun run =
        CommandRun.of("calibrate", command, 1, "--settings", booth.settings()).exits(1);
    assertTrue(run.err().contains("there is no log " + booth.log()), run.err());
    assertFalse(Files.exists(booth.log()));
  }

  @Test
  void shouldCallOutOfUseWhatWasMadeForAnotherNominalScale() {
    ChannelScale other = new ChannelScale(2 * nominal(Channel.CURRENT).unitsPerCount(), 0);
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(300));
    calibrate(Channel.CURRENT, other, TODAY.plusDays(300));
    List<String> states =
        list("-f", "json").exits(0).objects().stream()
            .map(line -> line.get("state").asText())
            .toList();
    assertEquals(List.of("superseded", "out of use"), states);
  }

  @Test
  void shouldListEveryCalibrationWithItsState() {
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(10));
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(300));
    calibrate(Channel.VOLTAGE, nominal(Channel.VOLTAGE), TODAY);
    try (CalibrationBook book = BoothCalibrations.open(booth.log())) {
      long refused =
          book.begin(Calibrations.head(Channel.VOLTAGE, nominal(Channel.VOLTAGE), TODAY));
      book.finish(
          refused,
          new CalibrationFinish(
              CalibrationFinish.Ending.REFUSED, 1, null, null, null, "too few levels"));
      book.begin(Calibrations.head(Channel.VOLTAGE, nominal(Channel.VOLTAGE), TODAY));
    }
    List<String> states =
        list("-f", "json").exits(0).objects().stream()
            .map(line -> line.get("state").asText())
            .toList();
    assertEquals(List.of("superseded", "in use", "overdue", "refused", "under way"), states);
    String text = list().exits(0).out();
    assertTrue(text.contains("refused: too few levels"), text);
    JsonNode first = list("-f", "json").objects().get(0);
    assertEquals(0.4, first.get("uncertainty_constant_amps").asDouble());
    assertEquals(2, first.get("points").asInt());
  }

  @Test
  void shouldWithdrawAndKeepTheRecord() {
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(300));
    String said = withdraw(1, TODAY.toString(), "clamp was dropped", "K-2").exits(0).out();
    assertTrue(said.contains("No calibration of the current is left"), said);
    assertTrue(said.contains("No run since then"), said);
    String text = list().exits(0).out();
    assertTrue(text.contains("withdrawn from " + TODAY + " on: clamp was dropped"), text);
  }

  @Test
  void shouldRefuseToWithdrawWhatCannotBe() {
    assertTrue(
        withdraw(1, "2026-03-01", "dropped", "K-2").exits(2).err().contains("no calibration 1"));
    assertFalse(Files.exists(booth.log()));
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(300));
    assertTrue(withdraw(1, "2026-03-01", " ", "K-2").exits(2).err().contains("--reason"));
    assertTrue(withdraw(1, "2026-03-01", "dropped", "a name").exits(2).err().contains("K-2"));
    withdraw(1, "yesterday", "dropped", "K-2").exits(2);
    withdraw(1, "2026-03-01", "dropped", "K-2").exits(0);
    assertTrue(
        withdraw(1, "2026-03-01", "dropped", "K-2").exits(2).err().contains("withdrawn before"));
  }

  @Test
  void shouldCheckEachChannelsCalibration() {
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(97));
    String text = check();
    assertTrue(text.contains("good  calibration current: calibration 1 of"), text);
    assertTrue(text.contains("(97 days left), U = 0.62 A at 110 A"), text);
    assertTrue(text.contains("note  calibration voltage: no calibration"), text);
    assertTrue(text.contains("next: boothlamp calibrate voltage"), text);
    calibrate(Channel.VOLTAGE, nominal(Channel.VOLTAGE), TODAY.minusDays(1));
    text = check();
    assertTrue(text.contains("overdue since " + TODAY.minusDays(1)), text);
    assertTrue(text.contains("(1 day over)"), text);
    assertTrue(text.contains("good  accuracy   from the calibrations"), text);
  }

  @Test
  void shouldCheckThatTheHardwareIsStillTheCalibrated() {
    calibrate(Channel.CURRENT, new ChannelScale(0.123, 7), TODAY.plusDays(97));
    String text = check();
    assertTrue(text.contains("was made for the nominal scale 0.123 A a count"), text);
    assertTrue(text.contains("the settings now say " + nominal(Channel.CURRENT).unitsPerCount()));
  }

  @Test
  void shouldJudgeASignInByTheCalibrationInUse() {
    booth.write(
        booth.procedures().resolve("narrow.toml"),
        """
        id = "N-1"
        revision = "1"
        process = "111"
        current = "dc+"
        source = "cc"
        [[pass]]
        name = "fill"
        amps = [100, 104]
        """);
    Object[] signIn = {"sign-in", "T-04", "--procedure", "N-1", "--settings", booth.settings()};
    CommandRun.of(signIn).exits(2);
    calibrate(Channel.CURRENT, nominal(Channel.CURRENT), TODAY.plusDays(97));
    CommandRun.of(signIn).exits(0);
  }
}
