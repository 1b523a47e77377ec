package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;

/** Reads a procedure file. Confined to one thread during the reading. */
public final class ProcedureFile {

  /** Below this a contact or a sensor's offset could pass for an arc. */
  private static final double LOWEST_ARC_ON_AMPS = 15;

  /** A TIG arc still burns here, and its machine gives no other current. */
  private static final double LOWEST_TIG_ARC_ON_AMPS = 5;

  private static final double HIGHEST_ARC_ON_AMPS = 100;
  private static final Range WIRE_MM = new Range(0.3, 10, "mm");
  private static final Range WIRE_FEED_MM_PER_S = new Range(1, 1_000, "mm/s");

  private final Problems problems;
  private final Section document;
  private final Map<String, Integer> windowLines = new HashMap<>();

  private ProcedureFile(Problems problems, Section document) {
    this.problems = problems;
    this.document = document;
  }

  /**
   * Reads and checks a whole file.
   *
   * @throws SettingsException with all that is wrong with it, in line order
   */
  public static LoadedProcedure read(Path file) {
    Problems problems = new Problems(file);
    String nextMove = "check the path, or write a procedure there after one of the examples";
    return new ProcedureFile(problems, TomlFile.read(problems, nextMove)).read();
  }

  private LoadedProcedure read() {
    Procedure procedure = procedure();
    document.refuseUnknown();
    problems.throwIfAny();
    return new LoadedProcedure(problems.file(), procedure, windowLines);
  }

  private Procedure procedure() {
    String id = document.requiredText("id", TextRule.NAME, "S-3F-18");
    String revision = document.requiredText("revision", TextRule.NAME, "1");
    Process process = document.requiredWord("process", processes());
    Polarity current = document.requiredWord("current", polarities());
    Characteristic source = document.requiredWord("source", characteristics());
    double arcOnAmps = arcOnAmps(process);
    return new Procedure(id, revision, process, current, source, arcOnAmps, passes());
  }

  private static Map<String, Process> processes() {
    Map<String, Process> words = new LinkedHashMap<>();
    for (Process process : Process.values()) {
      words.put(process.number(), process);
    }
    return words;
  }

  private static Map<String, Polarity> polarities() {
    Map<String, Polarity> words = new LinkedHashMap<>();
    for (Polarity polarity : Polarity.values()) {
      words.put(polarity.word(), polarity);
    }
    return words;
  }

  private static Map<String, Characteristic> characteristics() {
    Map<String, Characteristic> words = new LinkedHashMap<>();
    for (Characteristic characteristic : Characteristic.values()) {
      words.put(characteristic.word(), characteristic);
    }
    return words;
  }

  private double arcOnAmps(Process process) {
    String key = "arc_on_a";
    Range range = new Range(LOWEST_TIG_ARC_ON_AMPS, HIGHEST_ARC_ON_AMPS, "A");
    if (!document.has(key)) {
      return Double.NaN;
    }
    double amps = document.requiredNumber(key, range, LOWEST_ARC_ON_AMPS);
    boolean known = document.isSound(key) && document.isSound("process");
    if (known && amps < LOWEST_ARC_ON_AMPS && !process.isTig()) {
      document.refuse(
          key,
          "must be at least 15 A, but is "
              + Literal.ofNumber(amps)
              + " with process "
              + process.number()
              + " (only TIG, 141 and 142, may go down to 5 A)",
          "write " + key + " = 15, or leave it out");
    }
    return amps;
  }

  private List<Pass> passes() {
    List<Pass> passes = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Section section : document.sections("pass")) {
      Pass pass = pass(section);
      if (section.isSound("name") && !names.add(pass.name())) {
        section.refuse(
            "name",
            "must be given once, but " + Literal.of(pass.name()) + " is there already",
            "give this pass another name, or remove one of the two");
      }
      passes.add(pass);
    }
    if (passes.isEmpty() && document.isSound("pass")) {
      document.refuse(
          "pass",
          "is missing: a procedure needs at least one pass",
          "write [[pass]] on a line of its own, and below it e.g. name = \"fill\", amps = [95, 125]");
    }
    return passes;
  }

  private Pass pass(Section section) {
    String name = section.requiredText("name", TextRule.NAME, "fill");
    List<Window> windows = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      Window window = LimitReader.read(section, quantity);
      if (window != null) {
        windows.add(window);
      }
    }
    refuseWithoutAmpsAndVolts(section);
    Pass pass =
        new Pass(name, windows, wire(section), wireFeed(section), section.flag("whip", false));
    rememberLines(section, pass);
    return pass;
  }

  private static void refuseWithoutAmpsAndVolts(Section section) {
    if (!section.has("amps") && !section.has("volts")) {
      section.refuse(
          "amps",
          "is missing: a pass needs a limit of amps, of volts, or of both",
          "write e.g. amps = [95, 125] or volts = [20, 26]");
    }
  }

  private static double wire(Section section) {
    return section.has("wire_mm") ? section.requiredNumber("wire_mm", WIRE_MM, 1.2) : Double.NaN;
  }

  private static double wireFeed(Section section) {
    String key = "wire_feed_mm_s";
    return section.has(key) ? section.requiredNumber(key, WIRE_FEED_MM_PER_S, 100) : Double.NaN;
  }

  private void rememberLines(Section section, Pass pass) {
    for (Window window : pass.windows()) {
      Quantity quantity = window.quantity();
      windowLines.put(LoadedProcedure.keyOf(pass, quantity), section.lineOf(quantity.key()));
    }
  }
}
