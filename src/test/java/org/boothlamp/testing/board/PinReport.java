package org.boothlamp.testing.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Compares what the pins did with what they were to do, and prints the tables. Exits with 1 if they
 * did not follow. A program to run by hand.
 */
public final class PinReport {

  /** An emulated processor is slow, and shares a real one with others. */
  private static final double FOLLOWS_WITHIN_SECONDS = 0.25;

  /** A better level has to hold so long before the lamp shows it. */
  private static final double HOLD_SECONDS = 0.5;

  private static final double DARK_WITHIN_SECONDS = 1;
  private static final String SETTLING = "amber green";
  private static final String DARK = "dark";

  private final List<PinSample> samples;
  private final Map<String, Double> marks;
  private boolean failed;

  private PinReport(List<PinSample> samples, Map<String, Double> marks) {
    this.samples = samples;
    this.marks = marks;
  }

  /**
   * Prints the tables.
   *
   * @param args what {@link PinWatch} wrote, pins then marks; the lamp's trace of a daemon on
   *     another machine; the replay as JSON
   */
  public static void main(String[] args) throws IOException {
    List<PinSample> samples =
        Files.readAllLines(Path.of(args[0])).stream().map(PinSample::ofCsv).toList();
    PinReport report = new PinReport(samples, marks(Files.readAllLines(Path.of(args[1]))));
    report.printStarts();
    report.printRecording(Files.readAllLines(Path.of(args[2])), Files.readString(Path.of(args[3])));
    report.printEnds();
    System.exit(report.failed ? 1 : 0);
  }

  private static Map<String, Double> marks(List<String> rows) {
    Map<String, Double> marks = new LinkedHashMap<>();
    for (String row : rows) {
      String[] fields = row.split(",", 2);
      marks.put(fields[1], Double.parseDouble(fields[0]));
    }
    return marks;
  }

  private static void print(String format, Object... values) {
    System.out.printf(Locale.ROOT, format + "%n", values);
  }

  private String verdict(boolean good) {
    failed |= !good;
    return good ? "yes" : "NO";
  }

  /** Time of a mark that begins with this; the board has ended in order, so it is there. */
  private double mark(String beginning) {
    return marks.entrySet().stream()
        .filter(mark -> mark.getKey().startsWith(beginning))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("the board never said: " + beginning))
        .getValue();
  }

  private void printStarts() {
    print("%nStart-up on the emulated processor, which says nothing about a real one");
    print("  first daemon started   %6.1f s after switching on", mark("recording: started"));
    for (String daemon : List.of("recording", "TERM", "KILL", "STOP")) {
      double start = mark(daemon + ": started");
      double end = mark(daemon + ": seen");
      double lit =
          samples.stream()
              .filter(sample -> sample.seconds() > start && sample.seconds() < end)
              .filter(sample -> sample.isDriven() && !sample.lights().equals(DARK))
              .mapToDouble(PinSample::seconds)
              .findFirst()
              .orElse(Double.NaN);
      print("  %-9s  first light %6.1f s after the start of the daemon", daemon, lit - start);
    }
  }

  private void printRecording(List<String> trace, String replay) {
    List<LightChange> asked = fromSettling(LightChange.asked(trace.subList(1, trace.size())));
    List<LightChange> all =
        LightChange.seen(samples, mark("recording: started"), mark("recording: seen"));
    List<LightChange> seen = fromSettling(all);
    printBefore(all, seen.get(0).seconds());
    printChanges(asked, seen);
    printTimes(seen, replay);
  }

  private static List<LightChange> fromSettling(List<LightChange> changes) {
    int first = 0;
    while (!changes.get(first).lights().equals(SETTLING)) {
      first++;
    }
    return changes.subList(first, changes.size());
  }

  private void printBefore(List<LightChange> all, double settling) {
    print("%nBefore the arc: lights, and seconds before the arc was seen");
    all.stream()
        .filter(change -> change.seconds() < settling)
        .forEach(change -> print("  %-12s %8.2f", change.lights(), change.seconds() - settling));
  }

  private void printChanges(List<LightChange> asked, List<LightChange> seen) {
    print("%nThe recording: seconds since the arc was seen, on this machine and on the pins");
    print("  %-12s %8s %8s %8s  follows", "lights", "trace", "pins", "later");
    boolean sameOrder = lights(asked).equals(lights(seen));
    double clocks = medianDifference(asked, seen);
    double start = asked.get(0).seconds();
    for (int k = 0; k < Math.min(asked.size(), seen.size()); k++) {
      double due = asked.get(k).seconds() - start;
      double came = seen.get(k).seconds() - clocks - start;
      boolean follows =
          asked.get(k).lights().equals(seen.get(k).lights())
              && Math.abs(came - due) <= FOLLOWS_WITHIN_SECONDS;
      print(
          "  %-12s %8.2f %8.2f %+8.2f  %s",
          seen.get(k).lights(), due, came, came - due, verdict(follows));
    }
    print("  same lights in the same order: %s", verdict(sameOrder));
  }

  private static List<String> lights(List<LightChange> changes) {
    return changes.stream().map(LightChange::lights).toList();
  }

  /** From one clock to the other: the machines began the recording at times of their own. */
  private static double medianDifference(List<LightChange> asked, List<LightChange> seen) {
    double[] differences = new double[Math.min(asked.size(), seen.size())];
    for (int k = 0; k < differences.length; k++) {
      differences[k] = seen.get(k).seconds() - asked.get(k).seconds();
    }
    Arrays.sort(differences);
    return differences[differences.length / 2];
  }

  /** The replay counts what the averages said; the lamp holds a worse level a little longer. */
  private void printTimes(List<LightChange> seen, String replay) {
    print("%nSeconds of each level: what the averages said in the replay, and the pins");
    print("  (the lamp shows a worse level at once, a better one when it has held for 0.5 s)");
    Map<String, String> lightsOfKey = new LinkedHashMap<>();
    lightsOfKey.put("settling_s", SETTLING);
    lightsOfKey.put("green_s", "green");
    lightsOfKey.put("amber_s", "amber");
    lightsOfKey.put("red_s", "red");
    String segment = replay.lines().filter(line -> line.contains("\"segment\"")).findFirst().get();
    double arcSeconds = number(segment, "end_s") - number(segment, "start_s");
    for (Map.Entry<String, String> level : lightsOfKey.entrySet()) {
      double said = number(segment, level.getKey());
      double lit = litSeconds(seen, level.getValue(), arcSeconds + HOLD_SECONDS);
      boolean fits = Math.abs(lit - said) <= HOLD_SECONDS + FOLLOWS_WITHIN_SECONDS;
      print("  %-12s %8.2f %8.2f  %s", level.getKey(), said, lit, verdict(fits));
    }
  }

  private static double number(String json, String key) {
    Matcher matcher = Pattern.compile("\"" + key + "\":([0-9.]+)").matcher(json);
    if (!matcher.find()) {
      throw new IllegalArgumentException("the replay has no " + key + ": " + json);
    }
    return Double.parseDouble(matcher.group(1));
  }

  /** Time of these lights in the first seconds, but not in idle's blinks. */
  private static double litSeconds(List<LightChange> seen, String lights, double first) {
    double lit = 0;
    for (int k = 0; k + 1 < seen.size(); k++) {
      boolean counts = seen.get(k).seconds() - seen.get(0).seconds() < first;
      if (counts && seen.get(k).lights().equals(lights)) {
        lit += seen.get(k + 1).seconds() - seen.get(k).seconds();
      }
    }
    return lit;
  }

  private void printEnds() {
    print("%nThe end of the daemon: pins before the signal, and 5 s after it");
    print(
        "  %-8s %-6s %-7s %8s | %-6s %-7s %8s  %s",
        "", "lights", "pins", "beats/s", "lights", "pins", "beats/s", "last change after");
    End term = end("TERM");
    End kill = end("KILL");
    End stop = end("STOP");
    PinSample over = lastBefore(mark("recording: seen"));
    print("  dark at the end of the recording: %s", verdict(over.lights().equals(DARK)));
    print("  SIGTERM: dark within %.0f s: %s", DARK_WITHIN_SECONDS, verdict(term.isDarkSoon()));
    print("  SIGKILL: the heartbeat ends: %s", verdict(kill.beatsAfter() == 0));
    print("  SIGSTOP: the heartbeat ends: %s", verdict(stop.beatsAfter() == 0));
  }

  private End end(String signal) {
    double sent = mark(signal + ": signal");
    double seen = mark(signal + ": seen");
    PinSample before = lastBefore(sent);
    PinSample after = lastBefore(seen);
    long beatsAfter = beats(sent + DARK_WITHIN_SECONDS, seen);
    double lastChange = lastLightChange(sent, seen) - sent;
    print(
        "  SIG%-5s %-6s %-7s %8d | %-6s %-7s %8d  %.2f s",
        signal,
        before.lights(),
        use(before),
        beats(sent - 1, sent),
        after.lights(),
        use(after),
        beatsAfter,
        lastChange);
    return new End(after, beatsAfter, lastChange);
  }

  private static String use(PinSample sample) {
    return sample.isDriven() ? "outputs" : "inputs";
  }

  private record End(PinSample after, long beatsAfter, double lastChangeSeconds) {

    boolean isDarkSoon() {
      return after.lights().equals(DARK) && lastChangeSeconds <= DARK_WITHIN_SECONDS;
    }
  }

  private PinSample lastBefore(double seconds) {
    return samples.stream()
        .filter(sample -> sample.seconds() <= seconds)
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  /** Moment of the last change of a light or of what a light's pin is for; {@code from} if none. */
  private double lastLightChange(double from, double to) {
    PinSample last = lastBefore(from);
    double changed = from;
    for (PinSample sample : samples) {
      if (sample.seconds() > from && sample.seconds() <= to) {
        boolean same =
            sample.lights().equals(last.lights()) && sample.isDriven() == last.isDriven();
        changed = same ? changed : sample.seconds();
        last = sample;
      }
    }
    return changed;
  }

  /** Changes of the heartbeat's level. */
  private long beats(double from, double to) {
    boolean high = lastBefore(from).isHigh(PinSample.HEARTBEAT);
    long beats = 0;
    for (PinSample sample : samples) {
      boolean isIn = sample.seconds() > from && sample.seconds() <= to;
      if (isIn && sample.isHigh(PinSample.HEARTBEAT) != high) {
        high = !high;
        beats++;
      }
    }
    return beats;
  }
}
