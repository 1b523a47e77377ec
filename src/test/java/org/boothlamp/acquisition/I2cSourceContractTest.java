package org.boothlamp.acquisition;

import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;

class I2cSourceContractTest extends FedSourceContract {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless(15);
  private final ScriptedI2c bus = new ScriptedI2c(clock, I2cDevice.ADS1115, pairs);

  @Override
  protected SampleSource open() {
    bus.takeNanos(90_000, 1_200_000);
    return bus.source(new I2cSampling(new ChannelPair(0, 1), 250, 4.096, 860));
  }

  @Override
  protected PairStream sent() {
    return pairs;
  }
}
