package org.boothlamp.testing;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a command prints, read by somebody who sets the load as it says: {@code set 125 A, rising}.
 * Safe to share.
 */
public final class LoadFollower extends OutputStream {

  private static final Pattern SET = Pattern.compile("set ([-0-9.]+) ([AV]), ");

  private final SettableLoad load;
  private final ByteArrayOutputStream all = new ByteArrayOutputStream();
  private int followed;

  /** Somebody who stands at this load. */
  public LoadFollower(SettableLoad load) {
    this.load = load;
  }

  @Override
  public synchronized void write(int next) {
    all.write(next);
    if (next == '\n') {
      follow();
    }
  }

  private void follow() {
    Matcher set = SET.matcher(text());
    while (set.find(followed)) {
      followed = set.end();
      double level = Double.parseDouble(set.group(1));
      if (set.group(2).equals("A")) {
        load.amps(level);
      } else {
        load.volts(level);
      }
    }
  }

  /** Everything printed so far. */
  public synchronized String text() {
    return all.toString(StandardCharsets.UTF_8);
  }
}
