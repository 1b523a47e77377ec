package org.boothlamp.app;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.monitor.ClockTrust;
import org.tinylog.Logger;

/**
 * Asks the kernel whether its clock is synchronised: adjtimex(2) answers TIME_ERROR until a time
 * service has set the clock, and again after somebody has set it by hand. Where that call does not
 * exist, the mark that systemd-timesyncd(8) leaves is taken. Confined to one thread.
 */
final class KernelClock implements ClockTrust {

  /** The answer of a clock that nobody keeps, adjtimex(2). */
  private static final int TIME_ERROR = 5;

  /** More than {@code struct timex} has anywhere; all zero asks and changes nothing. */
  private static final int TIMEX_BYTES = 512;

  private static final Path TIMESYNC_MARK = Path.of("/run/systemd/timesync/synchronized");

  /** The C library, as far as it is needed. */
  interface CLibrary extends Library {
    int adjtimex(Pointer timex);
  }

  private CLibrary library;
  private Memory timex;
  private boolean loaded;

  @Override
  public boolean isTrusted() {
    if (!loaded) {
      load();
    }
    if (library == null) {
      return Files.exists(TIMESYNC_MARK);
    }
    timex.clear();
    int state = library.adjtimex(timex);
    return state >= 0 && state != TIME_ERROR;
  }

  /** At the first question, for it takes a moment that the lamp must not wait for. */
  private void load() {
    loaded = true;
    try {
      library = Native.load("c", CLibrary.class);
      timex = new Memory(TIMEX_BYTES);
    } catch (UnsatisfiedLinkError notThere) {
      library = null;
      Logger.info("the kernel cannot be asked for its clock ({})", notThere.getMessage());
    }
  }
}
