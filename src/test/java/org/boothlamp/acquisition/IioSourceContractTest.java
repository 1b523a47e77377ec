package org.boothlamp.acquisition;

import java.io.IOException;
import java.nio.file.Path;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.io.TempDir;

class IioSourceContractTest extends FedSourceContract {

  private static final int PER_SECOND = 1_000;

  @TempDir Path root;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless(12);
  private final ScanPipe pipe = new ScanPipe();
  private long sent;

  @Override
  protected SampleSource open() throws IOException {
    IioSource source =
        new IioSource(
            new FakeIioTree(root).address(),
            new ChannelPair(0, 1),
            PER_SECOND,
            file -> pipe,
            clock,
            clock::advanceNanos);
    source.open();
    return source;
  }

  @Override
  protected PairStream sent() {
    return pairs;
  }

  @Override
  protected void beforeRead() throws InterruptedException {
    clock.advanceMillis(10);
    pipe.send(FakeIioTree.scans(pairs, sent, 10, 0, PER_SECOND));
    sent += 10;
  }
}
