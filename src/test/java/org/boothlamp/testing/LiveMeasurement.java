package org.boothlamp.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Measures the daemon from outside, over a pseudo-terminal, as {@code src/bench/run-live} starts
 * it: start-up time, lamp latency, processor time, resident memory. A program to run by hand, not a
 * test: it takes minutes, and its numbers belong to the machine.
 *
 * <p>Lamp latency is the time from the moment the front end wrote the pair with which the plain
 * mean of the last second leaves green or amber, to the moment the lamp's trace file shows the
 * worse level.
 */
public final class LiveMeasurement {

  private static final double BASE_AMPS = 110;
  private static final double HIGH_AMPS = 150;
  private static final double VOLTS = 23;
  private static final double AMBER_AMPS = 122;
  private static final double RED_AMPS = 125;
  private static final double IDLE_SECONDS = 2;

  /** Not a multiple of 0.1 s, so that every phase of the judging is met. */
  private static final double CYCLE_SECONDS = 2.637;

  private static final double HIGH_SECONDS = 0.5;

  private final int pairsPerSecond;
  private final int seconds;
  private final Path folder;
  private final BoothFolder booth;

  private LiveMeasurement(int pairsPerSecond, int seconds, Path folder) {
    this.pairsPerSecond = pairsPerSecond;
    this.seconds = seconds;
    this.folder = folder;
    booth = new BoothFolder(folder);
  }

  /**
   * Runs one measurement and prints it.
   *
   * @param args pairs per second, seconds to run, then the command that starts the launcher
   */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("boothlamp-live");
    try {
      new LiveMeasurement(Integer.parseInt(args[0]), Integer.parseInt(args[1]), folder)
          .run(Arrays.asList(args).subList(2, args.length));
    } finally {
      delete(folder);
    }
  }

  private void run(List<String> launcher) throws Exception {
    try (PtyPair cable = new PtyPair(folder)) {
      writeSettings(cable.hostSide());
      List<String> command = new ArrayList<>(launcher);
      command.addAll(List.of("run", "--settings", booth.settings().toString()));
      long startNanos = System.nanoTime();
      Process daemon = new ProcessBuilder(command).inheritIO().start();
      try (FrontEndPlayer board =
          new FrontEndPlayer(cable.boardSide(), stream(), pairsPerSecond).start()) {
        measure(daemon, board, startNanos);
      } finally {
        daemon.destroy();
        daemon.waitFor(10, TimeUnit.SECONDS);
      }
    }
  }

  private void writeSettings(Path port) {
    booth.stickProcedure("P-1", "fill");
    booth
        .source(
            """
            [source]
            kind = "serial"
            port = "%s"
            [current]
            amps_per_count = 0.1
            [voltage]
            volts_per_count = 0.01
            """
                .formatted(port))
        .lamp("\"serial\", \"trace\"")
        .defaultProcedure("P-1")
        .write();
  }

  private PairStream stream() {
    return new PairStream() {
      @Override
      public long pairs() {
        return (long) seconds * pairsPerSecond;
      }

      @Override
      public short current(long index) {
        return (short) Math.round(10 * amps(index));
      }

      @Override
      public short voltage(long index) {
        return (short) (amps(index) == 0 ? 0 : 100 * VOLTS + ripple(index));
      }
    };
  }

  /** A count or two, so that no channel stands still. */
  private static long ripple(long index) {
    return index % 3 - 1;
  }

  private double amps(long index) {
    double time = (double) index / pairsPerSecond - IDLE_SECONDS;
    if (time < 0) {
      return 0;
    }
    double inCycle = time % CYCLE_SECONDS;
    boolean high = inCycle >= CYCLE_SECONDS - HIGH_SECONDS;
    return (high ? HIGH_AMPS : BASE_AMPS) + 0.1 * ripple(index + 1);
  }

  private void measure(Process daemon, FrontEndPlayer board, long startNanos) throws Exception {
    TimeUnit.SECONDS.sleep(10);
    long pid = daemon.toHandle().pid();
    long ticks = processorTicks(pid);
    long from = System.nanoTime();
    board.awaitDone();
    double share = (processorTicks(pid) - ticks) / 100.0 / ((System.nanoTime() - from) / 1e9);
    TimeUnit.MILLISECONDS.sleep(500);
    long residentKilobytes = residentKilobytes(pid);
    List<TraceRow> rows = trace();
    System.out.printf(
        Locale.ROOT,
        "%d pairs/s for %d s: first lamp signal %.0f ms after the start, %.2f %% of one core, %.1f MB"
            + " resident%n",
        pairsPerSecond,
        seconds,
        (rows.get(1).nanos() - startNanos) / 1e6,
        100 * share,
        residentKilobytes / 1024.0);
    printLatencies(latenciesMillis(rows, board));
  }

  private static long processorTicks(long pid) throws IOException {
    String[] fields =
        Files.readString(Path.of("/proc/" + pid + "/stat")).replaceFirst(".*\\) ", "").split(" ");
    return Long.parseLong(fields[11]) + Long.parseLong(fields[12]);
  }

  private static long residentKilobytes(long pid) throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/" + pid + "/status"))) {
      if (line.startsWith("VmRSS:")) {
        return Long.parseLong(line.replaceAll("\\D", ""));
      }
    }
    throw new IOException("no VmRSS for process " + pid);
  }

  private record TraceRow(long nanos, String signal) {}

  private List<TraceRow> trace() throws IOException {
    List<TraceRow> rows = new ArrayList<>();
    for (String line : Files.readAllLines(booth.trace())) {
      if (!line.startsWith("monotonic")) {
        String[] fields = line.split(",");
        rows.add(new TraceRow(Long.parseLong(fields[0]), fields[2]));
      }
    }
    return rows;
  }

  private double[] latenciesMillis(List<TraceRow> rows, FrontEndPlayer board) {
    List<Double> latencies = new ArrayList<>();
    long firstArc = (long) (IDLE_SECONDS * pairsPerSecond);
    double sum = 0;
    double before = 0;
    for (long k = firstArc; k < board.pairsDone(); k++) {
      sum += amps(k) - (k - pairsPerSecond >= firstArc ? amps(k - pairsPerSecond) : 0);
      double mean = sum / pairsPerSecond;
      if (k > firstArc + 2L * pairsPerSecond) {
        addCrossing(latencies, rows, board, k, before, mean, AMBER_AMPS, "amber");
        addCrossing(latencies, rows, board, k, before, mean, RED_AMPS, "red");
      }
      before = mean;
    }
    return latencies.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  private static void addCrossing(
      List<Double> latencies,
      List<TraceRow> rows,
      FrontEndPlayer board,
      long pair,
      double before,
      double mean,
      double limit,
      String signal) {
    if (before > limit || mean <= limit) {
      return;
    }
    long sent = board.sendNanosOfPair(pair);
    // The averages are judged every 0.1 s: a fast rise may pass amber between two judgements.
    rows.stream()
        .filter(row -> row.nanos() > sent)
        .filter(row -> row.signal().equals(signal) || row.signal().equals("red"))
        .min(Comparator.comparingLong(TraceRow::nanos))
        .ifPresent(row -> latencies.add((row.nanos() - sent) / 1e6));
  }

  private static void printLatencies(double[] sorted) {
    System.out.printf(
        Locale.ROOT,
        "lamp after the pair that moves the average out: n=%d, p50 %.1f ms, p99 %.1f ms, p99.9 %.1f"
            + " ms, max %.1f ms; later than 115 ms: %d%n",
        sorted.length,
        sorted[sorted.length / 2],
        sorted[sorted.length * 99 / 100],
        sorted[Math.min(sorted.length - 1, sorted.length * 999 / 1000)],
        sorted[sorted.length - 1],
        Arrays.stream(sorted).filter(latency -> latency > 115).count());
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
