package org.boothlamp.report;

import org.boothlamp.judging.Signal;

/** The lamp in letters, so that it reads without colour. */
public final class LampLights {

  private LampLights() {}

  /** The three lights by place: red, amber, green. */
  public static String of(Signal signal) {
    return switch (signal) {
      case DARK -> "   ";
      case IDLE -> "  .";
      case SETTLING -> " AG";
      case GREEN -> "  G";
      case AMBER -> " A ";
      case RED -> "R  ";
      case FAULT -> "!! ";
    };
  }

  /** One sign a signal, for a row of them; those of the levels are the report's. */
  static char sign(Signal signal) {
    return switch (signal) {
      case DARK, IDLE -> ' ';
      case SETTLING -> '.';
      case GREEN -> '=';
      case AMBER -> '~';
      case RED -> '!';
      case FAULT -> '?';
    };
  }

  static TextPage.Style style(Signal signal) {
    return switch (signal) {
      case DARK, IDLE -> TextPage.Style.FAINT;
      case GREEN -> TextPage.Style.GREEN;
      case SETTLING, AMBER -> TextPage.Style.AMBER;
      case RED, FAULT -> TextPage.Style.RED;
    };
  }
}
