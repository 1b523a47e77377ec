package org.boothlamp.cli;

/** How the report of a shift answers. */
enum ReportFormat {
  /** For people. */
  TEXT,
  /** For programs: one JSON object a line, field names with units. */
  JSON,
  /** One page with everything in it, for a screen, a phone and paper. */
  HTML,
  /** One table for a spreadsheet. */
  CSV;

  boolean isJson() {
    return this == JSON;
  }
}
