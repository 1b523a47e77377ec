package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IioSourceTest {

  private static final int PER_SECOND = 1_000;

  @TempDir Path root;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless(12);
  private final SampleBlock block = new SampleBlock();
  private FakeIioTree tree;
  private ScanPipe pipe;
  private IioSource source;

  @BeforeEach
  void setUp() throws IOException {
    tree = new FakeIioTree(root);
    source =
        new IioSource(
            tree.address(),
            new ChannelPair(0, 1),
            PER_SECOND,
            file -> {
              assertEquals(tree.deviceFile(), file);
              pipe = new ScanPipe();
              return pipe;
            },
            clock,
            clock::advanceNanos);
  }

  @AfterEach
  void close() {
    source.close();
  }

  private void send(long first, int count) throws InterruptedException {
    clock.advanceMillis(count);
    pipe.send(FakeIioTree.scans(pairs, first, count, 5_000, PER_SECOND));
  }

  @Test
  void shouldSetUpItsTwoChannelsAndNoOther() throws IOException {
    source.open();
    assertEquals("1", tree.read("scan_elements/in_voltage0_en"));
    assertEquals("1", tree.read("scan_elements/in_voltage1_en"));
    assertEquals("0", tree.read("scan_elements/in_voltage2_en"));
    assertEquals("0", tree.read("scan_elements/in_voltage3_en"));
    assertEquals("1", tree.read("scan_elements/in_timestamp_en"));
    assertEquals("monotonic", tree.read("current_timestamp_clock"));
    assertEquals("booth-timer", tree.read("trigger/current_trigger"));
    assertEquals("1000", tree.readTrigger("sampling_frequency"));
    assertEquals("2000", tree.read("buffer/length"));
    assertEquals("5", tree.read("buffer/watermark"));
    assertEquals("1", tree.read("buffer/enable"));
    source.close();
    assertEquals("0", tree.read("buffer/enable"));
  }

  @Test
  void shouldDeliverWhatTheKernelStored() throws InterruptedException {
    source.open();
    send(0, 20);
    assertEquals(Outcome.PAIRS, source.read(block));
    assertEquals(20, block.count);
    for (int pair = 0; pair < 20; pair++) {
      assertEquals(pairs.current(pair), block.current[pair]);
      assertEquals(pairs.voltage(pair), block.voltage[pair]);
    }
    assertEquals(
        new SourceFormat(PER_SECOND, 0, 4_095, "industrial-I/O device \"mcp3208\""),
        source.format());
  }

  @Test
  void shouldEndABlockBeforeAGapAndCountIt() throws InterruptedException {
    source.open();
    send(0, 20);
    send(27, 10);
    source.read(block);
    assertEquals(20, block.count);
    source.read(block);
    assertEquals(27, block.firstIndex);
    assertEquals(10, block.count);
    assertEquals(pairs.current(27), block.current[0]);
    assertEquals(7, source.counters().lostPairs);
  }

  @Test
  void shouldPutScansTogetherThatCameInPieces() throws InterruptedException {
    source.open();
    byte[] bytes = FakeIioTree.scans(pairs, 0, 2, 0, PER_SECOND);
    pipe.send(Arrays.copyOfRange(bytes, 0, 21));
    source.read(block);
    assertEquals(1, block.count);
    pipe.send(Arrays.copyOfRange(bytes, 21, 32));
    source.read(block);
    assertEquals(pairs.voltage(1), block.voltage[0]);
  }

  @Test
  void shouldWaitAtMostFiftyMillisecondsForPairs() {
    source.open();
    long start = clock.nanoTime();
    assertEquals(Outcome.NOTHING, source.read(block));
    assertTrue(clock.nanoTime() - start <= 50_000_000, "waited too long");
  }

  @Test
  void shouldComeBackAfterTheDeviceFailed() throws Exception {
    source.open();
    send(0, 10);
    source.read(block);
    long lastPairs = clock.nanoTime();
    pipe.fail("No such device");
    awaitNothing();
    assertTrue(
        source.trouble().contains("dev/iio:device1: cannot be read: No such device; see that"),
        source.trouble());
    clock.advanceMillis(500);
    source.read(block);
    send(0, 10);
    source.read(block);
    assertNull(source.trouble());
    assertEquals(1, source.counters().reconnects);
    double awaySeconds = (clock.nanoTime() - lastPairs) / 1e9;
    assertEquals(9 + awaySeconds * PER_SECOND, block.firstIndex, 1);
    assertEquals(0, source.counters().lostPairs);
  }

  /** The reader's thread passes the failure on in its own time. */
  private void awaitNothing() {
    while (source.trouble() == null) {
      assertEquals(Outcome.NOTHING, source.read(block));
    }
  }

  @Test
  void shouldSayThatTheTriggerRunsAtAnotherRate() throws InterruptedException {
    source.open();
    for (int sent = 0; sent < 4_000; sent += 50) {
      clock.advanceMillis(55);
      pipe.send(FakeIioTree.scans(pairs, sent, 50, 0, 909));
      readAll();
    }
    assertEquals(
        "industrial-I/O device \"mcp3208\": asked for 1000 pairs/s, its time stamps say 909; set"
            + " the trigger's rate, or write source.pairs_per_second = 909",
        source.trouble());
  }

  /** A read ends at a gap, and so slow a trigger looks like one every dozen pairs. */
  private void readAll() {
    for (int read = 0; read < 10; read++) {
      source.read(block);
    }
  }

  private String refusal() {
    return assertThrows(SourceException.class, source::open).getMessage().replace(root + "/", "");
  }

  @Test
  void shouldSayWhichDevicesThereAre() throws IOException {
    tree.put("name", "ads1015\n");
    assertEquals(
        "sys/bus/iio/devices: there is no iio:device named \"mcp3208\"; found: [thermometer,"
            + " ads1015]; see that its driver is loaded, and that source.name is one of those"
            + " names",
        refusal());
  }

  @Test
  void shouldSayThatThereIsNoChannelOfThatNumber() throws IOException {
    tree.remove("scan_elements/in_voltage1_en");
    assertEquals(
        "sys/bus/iio/devices/iio:device1/scan_elements/in_voltage1_en: is missing: the device does"
            + " not buffer in_voltage1; give an input that the device has",
        refusal());
    assertEquals("0", tree.read("buffer/enable"));
  }

  @Test
  void shouldRefuseADeviceWithoutTimeStamps() throws IOException {
    tree.remove("scan_elements/in_timestamp_en");
    assertTrue(refusal().endsWith("gaps could not be seen without"), refusal());
  }

  @Test
  void shouldRefuseCountsThatDoNotFit() throws IOException {
    tree.putElement("in_voltage0", 0, "le:u16/16>>0");
    assertTrue(
        refusal().contains("counts must lie between -32768 and 32767, and these reach 65535"),
        refusal());
  }

  @Test
  void shouldSayThatThereAreNoDevicesAtAll() {
    source =
        IioSource.at(
            new IioAddress(root.resolve("nowhere"), "mcp3208", ""), new ChannelPair(0, 1), 1_000);
    assertEquals(
        "nowhere/sys/bus/iio/devices: there is no such file; see that the device's driver is loaded"
            + " and that source.root is right",
        refusal());
  }
}
