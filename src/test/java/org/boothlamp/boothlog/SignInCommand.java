package org.boothlamp.boothlog;

import java.nio.file.Path;
import org.boothlamp.monitor.WallClock;

/** A short command in a process of its own: path, trainee, procedure, pass. */
final class SignInCommand {

  private SignInCommand() {}

  public static void main(String[] arguments) {
    SignIns.add(Path.of(arguments[0]), arguments[1], arguments[2], arguments[3], WallClock.SYSTEM);
  }
}
