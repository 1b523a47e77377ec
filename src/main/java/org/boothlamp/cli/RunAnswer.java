package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.function.Supplier;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.BeadJson;
import org.boothlamp.report.BeadRefusedException;
import org.boothlamp.report.BeadText;
import org.boothlamp.report.BeadWords;
import org.boothlamp.report.HeatVerdict;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** What commands answer of one run. */
final class RunAnswer {

  private RunAnswer() {}

  /**
   * Writes a run, its bead and what follows from it.
   *
   * @param spec command that is answered
   * @param run finds the run, or does first what was asked of it
   * @throws ParameterException if that is refused
   */
  static void write(
      CommandSpec spec,
      BoothSettings settings,
      FormatOption format,
      Terminal terminal,
      Supplier<RunRecord> run)
      throws IOException {
    try {
      write(run.get(), settings, format, terminal);
    } catch (BeadRefusedException refused) {
      throw new ParameterException(
          spec.commandLine(),
          refused.say(Phrases.in(Language.ENGLISH), settings.screen().units()),
          refused);
    }
  }

  private static void write(
      RunRecord run, BoothSettings settings, FormatOption format, Terminal terminal)
      throws IOException {
    Path log = SettingsOption.logOf(settings);
    CalibrationHistory history = LogCalibrations.read(log);
    ZoneId zone = ZoneId.systemDefault();
    RunSummary summary = summary(run, log, zone);
    HeatVerdict verdict = HeatVerdict.of(summary, history);
    PrintWriter writer = terminal.writer();
    if (format.isJson()) {
      BeadJson.write(summary, verdict, zone, writer);
    } else {
      BeadWords words = new BeadWords(Phrases.in(Language.ENGLISH), settings.screen().units());
      writer.print(BeadText.render(summary, verdict, words, zone, terminal.width()));
    }
    writer.flush();
  }

  private static RunSummary summary(RunRecord run, Path log, ZoneId zone) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.runSummary(run.id(), zone, WallClock.SYSTEM.epochMillis());
    }
  }
}
