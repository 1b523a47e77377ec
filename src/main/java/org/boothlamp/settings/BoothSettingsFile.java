package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.boothlamp.acquisition.RecordingLimits;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;

/** Reads booth.toml. Confined to one thread during the reading. */
public final class BoothSettingsFile {

  private static final TextRule BOOTH_ID =
      new TextRule("1 to 16 letters, digits and hyphens", Pattern.compile("[A-Za-z0-9-]{1,16}"));

  private static final Range PERCENT = new Range(0, 50, "%");

  /** One slot: the grain of every time in here. */
  private static final double SLOT_SECONDS = 0.01;

  private static final long MEGABYTE = 1_000_000;

  private final Problems problems;
  private final Section document;
  private final SettingsPaths paths;

  private BoothSettingsFile(Problems problems, Section document) {
    this.problems = problems;
    this.document = document;
    paths = new SettingsPaths(problems.file());
  }

  /**
   * Reads and checks a whole file; touches no hardware and no other file.
   *
   * @throws SettingsException with all that is wrong with it, in line order
   */
  public static BoothSettings read(Path file) {
    Problems problems = new Problems(file);
    String nextMove = "check the path, or write the settings there after the example booth.toml";
    return new BoothSettingsFile(problems, TomlFile.read(problems, nextMove)).read();
  }

  private BoothSettings read() {
    SourceReader sources = new SourceReader(document, paths);
    Path logFolder = paths.path(document.section("log"), "folder", "log");
    String boothId = document.section("booth").requiredText("id", BOOTH_ID, "B-07");
    SourceSettings source = sources.source();
    BoothSettings settings =
        new BoothSettings(
            problems.file(),
            boothId,
            source,
            sources.scale(),
            accuracy(document.section("accuracy")),
            new CalibrationReader(document.section("calibration")).read(),
            new LampReader(document.section("lamp"), paths).read(sources.kind()),
            arc(document.section("arc")),
            judging(document.section("averaging"), document.section("judging")),
            logFolder,
            new RetentionReader(document.section("retention")).read(),
            recordings(document.section("recordings"), logFolder),
            document.section("clock").flag("battery", false),
            procedures(document.section("procedures")),
            steadyRuleFile(document.section("progress")),
            new SyncReader(document, paths, boothId).read(),
            new BadgeSection(document, paths).read(source),
            screen(document.section("screen")),
            new PageReader(document, paths).read(),
            shifts());
    document.refuseUnknown();
    problems.throwIfAny();
    return settings;
  }

  private static ChannelUncertainties accuracy(Section section) {
    double amps = section.number("current_a", new Range(0, 100, "A"), 2.5);
    double ampsPercent = section.number("current_percent_of_reading", PERCENT, 0);
    double volts = section.number("voltage_v", new Range(0, 20, "V"), 0.5);
    double voltsPercent = section.number("voltage_percent_of_reading", PERCENT, 0);
    return new ChannelUncertainties(
        new ExpandedUncertainty(amps, ampsPercent / 100),
        new ExpandedUncertainty(volts, voltsPercent / 100),
        false);
  }

  private static ArcSettings arc(Section section) {
    return new ArcSettings(
        section.number("arc_on_a", new Range(5, 100, "A"), 15),
        seconds(section, "confirm_s", 0.01, 0.5, 0.05),
        seconds(section, "bridge_s", 0, 2, 0.3),
        seconds(section, "min_segment_s", 0.1, 5, 0.3),
        section.number("short_circuit_v", new Range(2, 15, "V"), 8));
  }

  private static JudgingSettings judging(Section averaging, Section judging) {
    double average = seconds(averaging, "average_s", 0.1, 5, 1.0);
    double settle = seconds(judging, "settle_s", 0.1, 10, 1.0);
    if (settle < average && averaging.isSound("average_s") && judging.isSound("settle_s")) {
      refuseEarlySettle(judging, settle, average);
    }
    return new JudgingSettings(
        average,
        settle,
        seconds(judging, "hold_s", 0, 5, 0.5),
        seconds(judging, "excursion_s", 0.1, 5, 0.3));
  }

  private static void refuseEarlySettle(Section judging, double settle, double average) {
    String least = Literal.ofNumber(average);
    judging.refuse(
        "settle_s",
        "must be at least averaging.average_s, "
            + least
            + " s, so that the first average judged is a whole one, but is "
            + Literal.ofNumber(settle)
            + " s",
        "write settle_s = " + least + " in [judging], or a shorter average_s in [averaging]");
  }

  /** A time of whole slots: rounding it in silence would judge by a number nobody wrote. */
  private static double seconds(
      Section section, String key, double low, double high, double byDefault) {
    double seconds = section.number(key, new Range(low, high, "s"), byDefault);
    double slots = seconds / SLOT_SECONDS;
    if (Math.abs(slots - Math.rint(slots)) > 1e-6) {
      section.refuse(key, "must be a multiple of 0.01 s", seconds, byDefault);
    }
    return seconds;
  }

  private RecordingsSettings recordings(Section section, Path logFolder) {
    String byDefault = logFolder.resolve("recordings").toString();
    return new RecordingsSettings(
        section.has("folder") ? paths.path(section, "folder", byDefault) : Path.of(byDefault),
        new RecordingLimits(
            MEGABYTE * section.whole("keep_mb", new Range(0, 10_000_000, "MB"), 200),
            (int) section.whole("keep_days", new Range(0, 36_500, "days"), 0),
            MEGABYTE * section.whole("free_mb", new Range(0, 10_000_000, "MB"), 100)));
  }

  private ProcedureSettings procedures(Section section) {
    Path folder = paths.path(section, "folder", "procedures");
    String procedure = section.text("default_procedure", TextRule.NAME, "", "S-3F-18");
    String pass = section.text("default_pass", TextRule.NAME, "", "fill");
    if (!pass.isEmpty() && !section.has("default_procedure")) {
      section.refuse(
          "default_pass",
          "must stand beside default_procedure, but is " + Literal.of(pass) + " alone",
          "write default_procedure = \"ID\" beside it, or remove it");
    }
    return new ProcedureSettings(folder, procedure, pass);
  }

  private Path steadyRuleFile(Section section) {
    return section.has("rule_file") ? paths.path(section, "rule_file", "steady.toml") : null;
  }

  private static ScreenSettings screen(Section section) {
    Map<String, Language> languages = new LinkedHashMap<>();
    for (Language language : Language.values()) {
      languages.put(language.code(), language);
    }
    Map<String, Units> units = new LinkedHashMap<>();
    for (Units each : Units.values()) {
      units.put(each.key(), each);
    }
    return new ScreenSettings(
        section.word("language", languages, Language.ENGLISH),
        section.word("units", units, Units.METRIC));
  }

  private List<ShiftSettings> shifts() {
    return new ShiftReader().read(document.sections("shift"));
  }
}
