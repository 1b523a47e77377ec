package org.boothlamp.acquisition;

import java.nio.file.Path;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.io.TempDir;

class FullSpeedRecordingContractTest extends FedSourceContract {

  @TempDir Path folder;

  @Override
  protected SampleSource open() {
    int pairs = (READS + 1) * SampleBlock.CAPACITY;
    Path wav = RecordingCase.write(folder.resolve("long.wav"), 5_000, pairs);
    return RecordingSource.atFullSpeed(Recording.open(wav));
  }

  @Override
  protected PairStream sent() {
    return PairStream.endless();
  }
}
