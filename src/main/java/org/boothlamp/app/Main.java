package org.boothlamp.app;

import org.boothlamp.cli.BoothlampCommand;
import org.boothlamp.cli.Terminal;

/** The front door. */
public final class Main {

  private Main() {}

  /** Runs one command and exits with its code: 0 done, 1 it failed, 2 wrong usage or settings. */
  public static void main(String[] args) {
    System.exit(BoothlampCommand.commandLine(new Wiring(), Terminal.system()).execute(args));
  }
}
