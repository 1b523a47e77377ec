package org.boothlamp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.acquisition.Recording;
import org.boothlamp.acquisition.RecordingWriter;
import org.boothlamp.acquisition.SimulatedBooth;
import org.boothlamp.acquisition.SimulatedProcess;
import org.boothlamp.acquisition.SimulatedRun;
import org.boothlamp.acquisition.SimulatedRunListener;
import org.boothlamp.acquisition.SimulatedSensor;
import org.boothlamp.acquisition.SimulatedSource;
import org.boothlamp.acquisition.SimulatedTrainee;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.BoothFolder;

/** A simulated booth with short runs and short pauses, recorded, to be played in real time. */
final class ShortRuns {

  private static final double[] ARC_SECONDS = {1.2, 3.5, 0.8, 5.5, 2.4};
  private static final PairScale SCALE =
      new PairScale(new ChannelScale(600.0 / 32768, 0), new ChannelScale(100.0 / 32768, 0));

  private ShortRuns() {}

  /** Makes them the source of a booth with a procedure. */
  static void into(BoothFolder booth, Path folder, int runs) {
    Path wav = folder.resolve("short-runs.wav");
    record(wav, runs);
    booth
        .source(
            "[source]\nkind = \"recording\"\nfile = \"%s\"\nspeed = \"real-time\"\n".formatted(wav))
        .defaultProcedure("S-3F-18");
    booth.stickProcedure("S-3F-18", "fill");
    booth.write();
  }

  /** What a second of their samples takes. */
  static long bytesPerSecond(Path folder) {
    return 4L * Recording.open(folder.resolve("short-runs.wav")).pairsPerSecond();
  }

  private static void record(Path wav, int runs) {
    SimulatedSource source =
        SimulatedSource.of(
            SimulatedBooth.of(script(runs), 1),
            SimulatedSensor.of(SCALE),
            SimulatedRunListener.NONE);
    try (RecordingWriter writer =
        new RecordingWriter(wav, source.format().pairsPerSecond(), SCALE)) {
      SampleBlock block = new SampleBlock();
      while (source.read(block) != SampleSource.Outcome.END) {
        writer.write(block);
      }
    }
  }

  private static List<SimulatedRun> script(int runs) {
    List<SimulatedRun> script = new ArrayList<>();
    for (int run = 0; run < runs; run++) {
      script.add(
          SimulatedRun.of(
              SimulatedRun.SHORTEST_PAUSE_SECONDS,
              SimulatedProcess.STICK,
              SimulatedTrainee.steady(1),
              ARC_SECONDS[run % ARC_SECONDS.length]));
    }
    return script;
  }
}
