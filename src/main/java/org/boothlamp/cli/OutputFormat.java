package org.boothlamp.cli;

/** How a command answers. */
enum OutputFormat {
  /** For people. */
  TEXT,
  /** For programs: one JSON object a line, field names with units. */
  JSON
}
