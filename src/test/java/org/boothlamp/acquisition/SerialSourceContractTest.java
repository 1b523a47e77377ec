package org.boothlamp.acquisition;

import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.BoardFrames;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;

class SerialSourceContractTest extends FedSourceContract {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final MemoryLine line = new MemoryLine();
  private final PairStream pairs = PairStream.endless();
  private final BoardFrames board = new BoardFrames(pairs, 10_000);

  @Override
  protected SampleSource open() {
    line.send(board.hello());
    return new SerialSource(line, clock);
  }

  @Override
  protected PairStream sent() {
    return pairs;
  }

  @Override
  protected void beforeRead() {
    clock.advanceMillis(5);
    line.send(board.samples(25));
    line.send(board.samples(25));
  }
}
