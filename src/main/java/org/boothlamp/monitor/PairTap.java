package org.boothlamp.monitor;

/**
 * Listens in on what the sampler reads and finds, to keep it at full rate.
 *
 * <p>Called on the sampler's thread: {@link #onPairs} with each block before it is worked on, then
 * {@link #onEntry} with what it brought for the log. Copies what it needs before it returns, for
 * both are filled again at once. Never waits, never throws and creates no objects once it runs.
 */
public interface PairTap {

  /** Keeps nothing. */
  PairTap NONE =
      new PairTap() {
        @Override
        public void onPairs(SampleBlock block, SourceFormat format) {
          // kept nowhere
        }

        @Override
        public void onEntry(LogEntry entry) {
          // kept nowhere
        }
      };

  /** Pairs of the source; a jump of the index is missing time. */
  void onPairs(SampleBlock block, SourceFormat format);

  /** An entry that is offered to the log, of a slot whose pairs were handed over before. */
  void onEntry(LogEntry entry);
}
