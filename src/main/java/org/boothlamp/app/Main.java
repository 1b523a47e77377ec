package org.boothlamp.app;

/** The front door. */
public final class Main {

  private Main() {}

  /** Runs one command and exits with its code. */
  public static void main(String[] args) {
    System.exit(2);
  }
}
