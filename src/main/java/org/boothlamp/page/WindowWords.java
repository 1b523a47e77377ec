package org.boothlamp.page;

import org.boothlamp.procedure.Window;
import org.boothlamp.report.Numbers;

/** A window for people: "95–125 A". */
final class WindowWords {

  private WindowWords() {}

  static String of(Window window) {
    return Numbers.plain(window.low())
        + "–"
        + Numbers.plain(window.high())
        + " "
        + window.quantity().unit();
  }
}
