package org.boothlamp.acquisition;

import java.nio.file.Path;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.io.TempDir;

class RealTimeRecordingContractTest extends FedSourceContract {

  @TempDir Path folder;

  private final HandTurnedClock clock = new HandTurnedClock();

  @Override
  protected SampleSource open() {
    Path wav = RecordingCase.write(folder.resolve("long.wav"), 5_000, 55 * (READS + 20));
    return RecordingSource.inRealTime(Recording.open(wav), clock, clock::advanceNanos);
  }

  @Override
  protected PairStream sent() {
    return PairStream.endless();
  }
}
