package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.time.Duration;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A named pipe as the device file: its reader waits without a limit, as the kernel's does. */
class IioSourceIT {

  private static final int PER_SECOND = 1_000;

  @TempDir Path root;

  private final PairStream pairs = PairStream.endless(12);
  private final SampleBlock block = new SampleBlock();

  @Test
  void shouldReadADeviceFileThatMakesItsReaderWait() throws Exception {
    FakeIioTree tree = new FakeIioTree(root);
    makePipe(tree.deviceFile());
    try (RandomAccessFile kernel = new RandomAccessFile(tree.deviceFile().toFile(), "rw")) {
      IioSource source = IioSource.at(tree.address(), new ChannelPair(0, 1), PER_SECOND);
      source.open();
      assertEquals(Outcome.NOTHING, source.read(block));
      kernel.write(FakeIioTree.scans(pairs, 0, 100, System.nanoTime(), PER_SECOND));
      assertEquals(100, countPairs(source, 100));
      assertTimeoutPreemptively(Duration.ofSeconds(5), source::close);
      assertEquals("0", tree.read("buffer/enable"));
      assertEquals(Outcome.END, source.read(block));
    }
  }

  private long countPairs(IioSource source, int wanted) {
    long count = 0;
    for (int reads = 0; count < wanted && reads < 100; reads++) {
      source.read(block);
      for (int pair = 0; pair < block.count; pair++) {
        assertEquals(pairs.current(block.firstIndex + pair), block.current[pair]);
        assertEquals(pairs.voltage(block.firstIndex + pair), block.voltage[pair]);
      }
      count += block.count;
    }
    return count;
  }

  private static void makePipe(Path path) throws Exception {
    Process made = new ProcessBuilder("mkfifo", path.toString()).inheritIO().start();
    assertTrue(made.waitFor() == 0, "mkfifo makes no pipe at " + path);
  }
}
