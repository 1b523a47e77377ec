package org.boothlamp.page;

import java.util.LinkedHashMap;
import java.util.Map;
import org.boothlamp.monitor.NanoClock;

/**
 * Lets each address have so many turns at once and so many a second. Remembers a fixed number of
 * addresses, the latest. Safe to share.
 */
final class RateLimit {

  private static final int MOST_ADDRESSES = 512;

  private final double atOnce;
  private final double perSecond;
  private final NanoClock clock;
  private final Map<String, Bucket> buckets =
      new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
          return size() > MOST_ADDRESSES;
        }
      };

  RateLimit(double atOnce, double perSecond, NanoClock clock) {
    this.atOnce = atOnce;
    this.perSecond = perSecond;
    this.clock = clock;
  }

  /** Takes a turn; false if the address has none left. */
  synchronized boolean allows(String address) {
    long now = clock.nanoTime();
    Bucket bucket = buckets.computeIfAbsent(address, any -> new Bucket(atOnce, now));
    bucket.turns = Math.min(atOnce, bucket.turns + (now - bucket.nanos) * 1e-9 * perSecond);
    bucket.nanos = now;
    if (bucket.turns < 1) {
      return false;
    }
    bucket.turns--;
    return true;
  }

  private static final class Bucket {
    private double turns;
    private long nanos;

    Bucket(double turns, long nanos) {
      this.turns = turns;
      this.nanos = nanos;
    }
  }
}
