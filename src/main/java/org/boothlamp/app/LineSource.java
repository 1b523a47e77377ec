package org.boothlamp.app;

import org.boothlamp.acquisition.SerialLine;
import org.boothlamp.acquisition.SerialSource;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;

/**
 * A serial source that owns its line. The lamp writes to the same line: it is closed before this
 * source.
 */
record LineSource(SerialSource source, SerialLine line) implements SampleSource {

  @Override
  public Outcome read(SampleBlock block) {
    return source.read(block);
  }

  @Override
  public SourceFormat format() {
    return source.format();
  }

  @Override
  public SourceCounters counters() {
    return source.counters();
  }

  @Override
  public String trouble() {
    return source.trouble();
  }

  @Override
  public void close() {
    source.close();
    line.close();
  }
}
