package org.boothlamp.acquisition;

import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;

class SpiSourceContractTest extends FedSourceContract {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless(12);
  private final ScriptedSpi bus = new ScriptedSpi(clock, SpiDevice.MCP3208, pairs);

  @Override
  protected SampleSource open() {
    bus.takeNanos(30_000);
    return bus.source(new ChannelPair(0, 1), 5_000);
  }

  @Override
  protected PairStream sent() {
    return pairs;
  }
}
