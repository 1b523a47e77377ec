package org.boothlamp.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.Collectors;
import org.boothlamp.report.JsonLines;
import org.boothlamp.sync.SyncStatus;

/** How far rows have been sent, for people and for programs. */
final class SyncStatusText {

  private static final int MOST_SET_ASIDE = 20;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  private SyncStatusText() {}

  static void write(SyncStatus status, Terminal terminal, boolean json) throws IOException {
    if (json) {
      PrintWriter writer = terminal.writer();
      writeJson(status, new JsonLines(writer));
      writer.flush();
    } else {
      writeText(status, terminal.out());
    }
  }

  private static void writeText(SyncStatus status, PrintStream out) {
    out.println("to            " + status.target());
    out.println("waiting       " + waiting(status));
    out.println("all sent      " + time(status.lastSuccessWallMillis()));
    out.println("last failure  " + time(status.lastFailureWallMillis()));
    if (!status.failure().isEmpty()) {
      out.println("wrong now     " + status.failure());
      out.println("next          " + status.nextMove());
    }
    if (!status.setAside().isEmpty()) {
      out.println("set aside     " + status.setAside().size() + " rows that are refused:");
      for (SyncStatus.SetAside row : status.setAside().stream().limit(MOST_SET_ASIDE).toList()) {
        out.println("              " + row.table() + " " + row.id() + ": " + row.reason());
      }
      out.println("next          find out why; boothlamp sync --retry-set-aside tries them again");
    }
  }

  static String waiting(SyncStatus status) {
    if (status.backlogRows() == 0) {
      return "nothing";
    }
    return status.backlogRows()
        + " rows: "
        + status.backlog().stream()
            .filter(backlog -> backlog.rows() > 0)
            .map(backlog -> backlog.rows() + " " + backlog.table())
            .collect(Collectors.joining(", "));
  }

  static String time(long wallMillis) {
    return wallMillis == 0
        ? "never"
        : TIME.format(Instant.ofEpochMilli(wallMillis).atZone(ZoneId.systemDefault()));
  }

  private static void writeJson(SyncStatus status, JsonLines json) throws IOException {
    for (SyncStatus.SetAside row : status.setAside()) {
      json.start("set_aside").text("table", row.table()).count("id", row.id());
      json.text("reason", row.reason()).end();
    }
    json.start("sync_status").text("target", status.target());
    json.count("waiting_rows", status.backlogRows());
    json.count("set_aside_rows", status.setAside().size());
    json.count("last_success_wall_ms", status.lastSuccessWallMillis());
    json.count("last_failure_wall_ms", status.lastFailureWallMillis());
    json.text("failure", status.failure()).text("next_move", status.nextMove()).end();
    json.flush();
  }
}
