package org.boothlamp.page;

/** How much of the live values a visitor is sent. */
enum LiveKind {
  /** With the trace points: for a chart. */
  CHART,
  /** Lamp, averages and who welds: for one of many on a screen. */
  LAMP
}
