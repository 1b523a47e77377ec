package org.boothlamp.acquisition;

import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.testing.BoardFrames;
import org.boothlamp.testing.FedSourceContract;
import org.boothlamp.testing.PairStream;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** The source over the real library and pseudo-terminals. */
class SerialSourceContractIT extends FedSourceContract {

  @TempDir Path folder;

  private final PairStream pairs = PairStream.endless();
  private final BoardFrames board = new BoardFrames(pairs, 10_000);
  private PtyPair cable;
  private SerialLine line;
  private FileOutputStream output;

  @Override
  protected SampleSource open() throws IOException {
    cable = new PtyPair(folder);
    line = new SerialLine(cable.hostSide().toString(), 1_000_000);
    line.open();
    output = new FileOutputStream(cable.boardSide().toFile());
    output.write(board.hello());
    return new SerialSource(line, NanoClock.SYSTEM);
  }

  @Override
  protected PairStream sent() {
    return pairs;
  }

  @Override
  protected void beforeRead() throws IOException {
    output.write(board.samples(25));
  }

  @AfterEach
  void closeCable() throws IOException {
    output.close();
    line.close();
    cable.close();
  }
}
