package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.testing.PairStream;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The front end's firmware, compiled and run, against the host's own source and frames. */
class FrontEndFirmwareIT {

  private static final long LONGEST_TEST_NANOS = TimeUnit.SECONDS.toNanos(30);
  private static final long LAMP_REPEAT_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
  private static final long SILENCE_NANOS = TimeUnit.SECONDS.toNanos(1);

  /** How late a process may get its turn on a busy machine. */
  private static final long SCHEDULER_NANOS = TimeUnit.MILLISECONDS.toNanos(400);

  @TempDir static Path programFolder;
  private static Path program;

  @TempDir Path folder;

  private PairStream pairs = PairStream.endless();
  private final SampleBlock block = new SampleBlock();
  private final BitSet pairsRead = new BitSet();
  private PtyPair cable;
  private DamagingLine damage;
  private ByteLine line;
  private SerialSource source;
  private FirmwareBoard board;

  private final FrameEncoder encoder = new FrameEncoder();
  private final LampFrame lamp = new LampFrame();
  private final byte[] wire = new byte[FrameEncoder.LONGEST_WIRE_BYTES];

  /** What is sent every 0.25 s, or null for a silent host. */
  private Signal signal;

  private long nextLampNanos;

  /** When a frame that asks for green was last sent whole. */
  private long greenSentNanos;

  @BeforeAll
  static void compile() throws IOException {
    Path target = programFolder.resolve("front-end-pc");
    program = FirmwareBuild.forThisMachine(target, List.of("-O2"), "core", "pc");
  }

  @BeforeEach
  void open() throws IOException {
    cable = new PtyPair(folder);
    SerialLine serialLine = new SerialLine(cable.hostSide().toString(), 1_000_000);
    damage = new DamagingLine(serialLine, 20);
    line = serialLine;
    serialLine.open();
  }

  @AfterEach
  void close() throws IOException {
    if (board != null) {
      board.close();
    }
    line.close();
    cable.close();
  }

  /** Starts the board on a line to read from: the bare one or the damaging one. */
  private void start(ByteLine readFrom, String... options) throws IOException {
    line = readFrom;
    source = new SerialSource(readFrom, NanoClock.SYSTEM);
    board = new FirmwareBoard(program, cable.boardSide(), options);
  }

  private void runUntil(BooleanSupplier done) {
    long start = System.nanoTime();
    while (!done.getAsBoolean()) {
      assertTrue(System.nanoTime() - start < LONGEST_TEST_NANOS, "it takes too long");
      runOnce();
    }
  }

  private void runFor(long nanos) {
    long start = System.nanoTime();
    runUntil(() -> System.nanoTime() - start >= nanos);
  }

  private void runOnce() {
    if (signal != null && System.nanoTime() - nextLampNanos >= 0) {
      send(signal);
    }
    if (source.read(block) == Outcome.PAIRS) {
      takePairs();
    }
  }

  private void takePairs() {
    for (int pair = 0; pair < block.count; pair++) {
      long index = block.firstIndex + pair;
      assertEquals(pairs.current(index), block.current[pair], () -> "current " + index);
      assertEquals(pairs.voltage(index), block.voltage[pair], () -> "voltage " + index);
    }
    pairsRead.set((int) block.firstIndex, (int) block.firstIndex + block.count);
  }

  private void show(Signal next) {
    signal = next;
    nextLampNanos = System.nanoTime();
  }

  private void send(Signal next) {
    lamp.counter = lamp.counter + 1 & 0xFF;
    lamp.signalCode = next.code();
    boolean whole = line.write(wire, encoder.lamp(lamp, wire));
    nextLampNanos = System.nanoTime() + LAMP_REPEAT_NANOS;
    if (whole && next == Signal.GREEN) {
      greenSentNanos = System.nanoTime();
    }
  }

  private void awaitLights(String lights) {
    runUntil(() -> board.lights().equals(lights));
  }

  @Test
  void coreShouldPassItsOwnTestsUnderTheSanitizers() throws IOException {
    List<String> sanitizers =
        List.of("-O1", "-g", "-fsanitize=address,undefined", "-fno-sanitize-recover=all");
    Path tests = folder.resolve("core-test");
    FirmwareBuild.forThisMachine(tests, sanitizers, "core", "core/test");
    String printed = FirmwareBuild.runOf(List.of(tests.toString()));
    assertTrue(printed.matches("(?s).*\\d+ tests passed\\s*"), printed);
  }

  @Test
  void firmwareShouldCompileForTheBoardAndLeaveRoomForTheStack() throws IOException {
    Path elf = FirmwareBuild.forTheBoard(folder.resolve("front-end.elf"));
    String size = FirmwareBuild.runOf(List.of("avr-size", elf.toString()));
    String[] words = size.lines().skip(1).findFirst().orElseThrow().trim().split("\\s+");
    int flashBytes = Integer.parseInt(words[0]) + Integer.parseInt(words[1]);
    int ramBytes = Integer.parseInt(words[1]) + Integer.parseInt(words[2]);
    System.out.printf(Locale.ROOT, "firmware: %d bytes flash, %d RAM%n", flashBytes, ramBytes);
    assertTrue(flashBytes <= 32_256, size);
    assertTrue(ramBytes <= 2_048 - 512, size);
  }

  @Test
  void firmwareShouldRunOnASimulatedChip() throws IOException {
    Path elf = FirmwareBuild.forTheBoard(folder.resolve("front-end.elf"));
    Path chip = folder.resolve("board-test");
    FirmwareBuild.forThisMachine(chip, List.of("-O2", "-lsimavr", "-lelf"), "core", "board/test");
    String printed = FirmwareBuild.runOf(List.of(chip.toString(), elf.toString()));
    System.out.print(printed);
    assertTrue(printed.matches("(?s).*\\d+ tests passed\\s*"), printed);
  }

  @Test
  void shouldDeliverEveryPairOfACleanLine() throws IOException {
    start(line, "--rate", "10000", "--frame-pairs", "100");
    runUntil(() -> pairsRead.cardinality() >= 20_000);
    assertEquals(0, source.counters().badFrames);
    assertEquals(0, source.counters().lostPairs);
    assertEquals(pairsRead.length(), pairsRead.cardinality());
    assertEquals(10_000, source.format().pairsPerSecond());
    assertEquals("pc", source.format().device());
  }

  @Test
  void shouldPlayThePairsOfAFileRoundAndRound() throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(4 * 777).order(ByteOrder.LITTLE_ENDIAN);
    for (int index = 0; index < 777; index++) {
      bytes.putShort((short) (index * 13)).putShort((short) -index);
    }
    Path file = Files.write(folder.resolve("pairs"), bytes.array());
    pairs =
        new PairStream() {
          @Override
          public long pairs() {
            return Long.MAX_VALUE;
          }

          @Override
          public short current(long index) {
            return (short) (index % 777 * 13);
          }

          @Override
          public short voltage(long index) {
            return (short) -(index % 777);
          }
        };
    start(line, "--pairs", file.toString());
    runUntil(() -> pairsRead.cardinality() >= 2_000);
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldDropWholeFramesWhenTheLineIsCongested() throws IOException {
    start(line, "--rate", "10000", "--frame-pairs", "40");
    runUntil(() -> pairsRead.cardinality() >= 1_000);
    LockSupport.parkNanos(TimeUnit.SECONDS.toNanos(3));
    int before = pairsRead.cardinality();
    runUntil(() -> source.counters().lostPairs > 0 && pairsRead.cardinality() > before + 20_000);
    assertEquals(0, source.counters().badFrames);
    assertEquals(0, source.counters().lostPairs % 40);
    assertEquals(source.counters().lostPairs, pairsRead.length() - pairsRead.cardinality());
  }

  @Test
  void shouldDeliverExactlyThePairsOfWholeFramesAndFollowTheLampWhenBothWaysAreDamaged()
      throws IOException {
    start(damage, "--rate", "10000", "--frame-pairs", "25");
    damage.harmOneWriteIn(3);
    Signal[] steady = {Signal.SETTLING, Signal.GREEN, Signal.AMBER, Signal.RED};
    String[] lights = {".AG", "..G", ".A.", "R.."};
    for (int change = 0; change < 20; change++) {
      show(steady[change % 4]);
      awaitLights(lights[change % 4]);
      runFor(TimeUnit.MILLISECONDS.toNanos(150));
    }
    assertTrue(damage.harmedFrames() > 20, () -> "harmed: " + damage.harmedFrames());
    assertEquals(wholePairsSoFar(), pairsRead);
    assertTrue(source.counters().badFrames >= damage.harmedFrames() / 2);
  }

  /** Up to the last pair read: one more frame may wait in the source. */
  private BitSet wholePairsSoFar() {
    return damage.wholePairs().get(0, pairsRead.length());
  }

  @Test
  void shouldBeDarkUntilTheFirstFrameAndInFaultASecondAfterTheLast() throws IOException {
    // The board's clock wraps 2 s after its start.
    start(line, "--clock-start", Long.toString((1L << 32) - 2_000));
    runFor(TimeUnit.MILLISECONDS.toNanos(1_300));
    assertEquals(List.of("..."), board.changes().stream().map(c -> c.lights()).toList());
    show(Signal.GREEN);
    awaitLights("..G");
    runFor(TimeUnit.MILLISECONDS.toNanos(1_500));
    assertEquals("..G", board.lights());
    signal = null;
    awaitLights("R..");
    checkGreenEndedInTime();
    awaitLights(".A.");
    awaitLights("R..");
    show(Signal.IDLE);
    awaitLights("..G");
    awaitLights("...");
  }

  private void checkGreenEndedInTime() {
    FirmwareBoard.Change fault = board.changes().get(board.changes().size() - 1);
    long nanos = fault.nanos() - greenSentNanos;
    System.out.printf(Locale.ROOT, "green ended %.3f s after its last frame%n", nanos / 1e9);
    assertTrue(nanos > SILENCE_NANOS - TimeUnit.MILLISECONDS.toNanos(20), () -> nanos + " ns");
    assertTrue(nanos < SILENCE_NANOS + SCHEDULER_NANOS, () -> nanos + " ns");
  }

  @Test
  void shouldEndAGreenWhoseFramesAreAllDamaged() throws IOException {
    start(damage);
    show(Signal.GREEN);
    awaitLights("..G");
    damage.harmOneWriteIn(1);
    awaitLights("R..");
    checkGreenEndedInTime();
    runFor(TimeUnit.SECONDS.toNanos(2));
    List<FirmwareBoard.Change> changes = board.changes();
    assertEquals(1, changes.stream().filter(FirmwareBoard.Change::isGreenLit).count());
  }
}
