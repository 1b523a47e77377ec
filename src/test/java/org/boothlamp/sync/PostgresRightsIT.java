package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.SyncServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What each role can do on a real server, and what the program says when it cannot. */
class PostgresRightsIT {

  private static final String BOOTH = "B-07";
  private static final String DENIED = "42501";

  private static final List<String> TABLES =
      List.of(
          "boot",
          "sign_in",
          "touch",
          "event",
          "segment",
          "segment_window",
          "excursion",
          "trace",
          "bead",
          "reference_weld",
          "forgotten",
          "calibration",
          "calibration_point",
          "calibration_discard",
          "calibration_finish",
          "calibration_withdrawal",
          "calibration_check");

  @TempDir static Path serverFolder;
  private static SyncServer server;

  @TempDir Path folder;

  @BeforeAll
  static void startServer() throws Exception {
    server = SyncServer.start(serverFolder);
    server.addBooth(BOOTH);
    server.addBooth("B-08");
  }

  @AfterAll
  static void stopServer() throws Exception {
    server.close();
  }

  @BeforeEach
  void emptyServer() {
    server.empty();
  }

  private Path log(String booth, int segments) {
    Path log = folder.resolve("log-" + booth).resolve("booth.db");
    FilledLog.write(log, booth, segments);
    return log;
  }

  private static void send(Path log, String booth, PostgresTarget target) throws SyncException {
    try (Syncer syncer = Syncer.open(log, booth, target, WallClock.SYSTEM)) {
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
    }
  }

  private static SyncException refusal(Path log, String booth, PostgresTarget target) {
    SyncException refused = assertThrows(SyncException.class, () -> send(log, booth, target));
    assertEquals(SyncException.Kind.SET_UP, refused.kind(), refused.getMessage());
    return refused;
  }

  private static void assertDenied(String role, String sql) throws SQLException {
    try (Connection connection = server.connect(role);
        Statement statement = connection.createStatement()) {
      SQLException denied = assertThrows(SQLException.class, () -> statement.execute(sql), sql);
      assertEquals(DENIED, denied.getSQLState(), sql + ": " + denied.getMessage());
    }
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void shouldNotLetABoothReadOrChangeOrRemoveRows(String table) throws Exception {
    assertDenied("booth-" + BOOTH, "SELECT * FROM boothlamp." + table);
    assertDenied("booth-" + BOOTH, "UPDATE boothlamp." + table + " SET from_booth = 'x'");
    assertDenied("booth-" + BOOTH, "DELETE FROM boothlamp." + table);
    assertDenied("booth-" + BOOTH, "TRUNCATE boothlamp." + table);
  }

  @ParameterizedTest
  @ValueSource(strings = {"boot", "segment", "segment_window", "excursion", "trace", "touch"})
  void shouldNotLetABoothReadTheViews(String view) throws Exception {
    assertDenied("booth-" + BOOTH, "SELECT * FROM boothlamp.current_" + view);
  }

  @ParameterizedTest
  @FieldSource("TABLES")
  void shouldLetAnInstructorOnlyReadTheViews(String table) throws Exception {
    assertDenied("instructor", "SELECT * FROM boothlamp." + table);
    assertDenied("instructor", "DELETE FROM boothlamp." + table);
    assertDenied("instructor", "INSERT INTO boothlamp." + table + " DEFAULT VALUES");
  }

  @Test
  void shouldTellWhatARoleMayDo() throws Exception {
    assertEquals(
        new PostgresRights(List.of(), List.of(), List.of()),
        PostgresRights.ask(server.target(BOOTH)));
    server.run("REVOKE INSERT ON boothlamp.trace FROM boothlamp_booth");
    server.run("GRANT DELETE ON boothlamp.touch TO boothlamp_booth");
    server.run("ALTER TABLE boothlamp.calibration_check DISABLE ROW LEVEL SECURITY");
    PostgresRights rights = PostgresRights.ask(server.target(BOOTH));
    server.run("GRANT INSERT ON boothlamp.trace TO boothlamp_booth");
    server.run("REVOKE DELETE ON boothlamp.touch FROM boothlamp_booth");
    server.run("ALTER TABLE boothlamp.calibration_check ENABLE ROW LEVEL SECURITY");
    assertEquals(
        new PostgresRights(List.of("trace"), List.of("touch"), List.of("calibration_check")),
        rights);
  }

  @Test
  void shouldTakeRowSecurityAgainAfterANewStep() throws Exception {
    server.run(Files.readString(Path.of("deploy/postgresql/row-security.sql")));
    assertEquals(List.of(), PostgresRights.ask(server.target(BOOTH)).open());
  }

  @Test
  void shouldNotLetABoothAddRowsOfAnother() throws Exception {
    SyncException refused = refusal(log(BOOTH, 1), BOOTH, server.target("B-08"));
    assertTrue(refused.getMessage().contains("no rows of this booth"), refused.getMessage());
    assertTrue(refused.getMessage().contains("log in as"), refused.getMessage());
    assertEquals(0, server.number("SELECT count(*) FROM boothlamp.boot"));
  }

  @Test
  void shouldSayThatThePasswordIsWrongAndLoseNothing() throws Exception {
    Path log = log(BOOTH, 2);
    PostgresTarget good = server.target(BOOTH);
    PostgresTarget bad =
        new PostgresTarget(
            good.host(),
            good.port(),
            good.database(),
            good.user(),
            PasswordSource.ofFile(server.passwordFile("guess")),
            null,
            good.tls());
    SyncException refused = refusal(log, BOOTH, bad);
    assertTrue(refused.getMessage().contains("or its password"), refused.getMessage());
    assertTrue(refused.getMessage().contains("check user and password file"), refused.getMessage());
    send(log, BOOTH, good);
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldSayThatATableIsMissingAndLoseNothing() throws Exception {
    Path log = log(BOOTH, 2);
    server.run("ALTER TABLE boothlamp.trace RENAME TO elsewhere");
    SyncException refused = refusal(log, BOOTH, server.target(BOOTH));
    server.run("ALTER TABLE boothlamp.elsewhere RENAME TO trace");
    assertTrue(refused.getMessage().contains("lacks a table"), refused.getMessage());
    assertTrue(refused.getMessage().contains("deploy/postgresql"), refused.getMessage());
    send(log, BOOTH, server.target(BOOTH));
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldSayThatAColumnIsMissingAndLoseNothing() throws Exception {
    Path log = log(BOOTH, 2);
    server.run("ALTER TABLE boothlamp.segment RENAME COLUMN energy_j TO other");
    SyncException refused = refusal(log, BOOTH, server.target(BOOTH));
    server.run("ALTER TABLE boothlamp.segment RENAME COLUMN other TO energy_j");
    assertTrue(refused.getMessage().contains("older schema"), refused.getMessage());
    send(log, BOOTH, server.target(BOOTH));
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldSayThatAStepIsMissing() throws Exception {
    Path log = log(BOOTH, 1);
    server.run("DELETE FROM boothlamp.schema_step");
    SyncException refused = refusal(log, BOOTH, server.target(BOOTH));
    server.run("INSERT INTO boothlamp.schema_step (version) VALUES (4)");
    assertTrue(refused.getMessage().contains("last step is 0"), refused.getMessage());
  }

  @Test
  void shouldSayThatThereIsNoSuchDatabase() {
    PostgresTarget good = server.target(BOOTH);
    PostgresTarget bad =
        new PostgresTarget(
            good.host(), good.port(), "none", good.user(), good.password(), null, good.tls());
    SyncException refused = refusal(log(BOOTH, 1), BOOTH, bad);
    assertTrue(refused.getMessage().contains("no such database"), refused.getMessage());
  }

  @Test
  void shouldReadWhatWasSaidOfRunsAsTheBoothDoes() throws Exception {
    Path log = log(BOOTH, 12);
    Beads beads = new Beads(log, WallClock.SYSTEM);
    beads.enter(5, 14.8, "", EnteredBy.NOT_SAID);
    beads.enter(5, 148, "no crater", EnteredBy.TRAINEE);
    beads.enter(7, 120, "", EnteredBy.NOT_SAID);
    beads.markReference(5, "even ripples", EnteredBy.INSTRUCTOR);
    beads.markReference(6, "", EnteredBy.INSTRUCTOR);
    beads.withdrawReference(6, EnteredBy.INSTRUCTOR);
    send(log, BOOTH, server.target(BOOTH));
    new ServerRows(server).assertSame(log, BOOTH);
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      assertEquals(reader.read(0, Long.MAX_VALUE).runs(), records().runs());
    }
    // The fifth run is that of T-4.
    FilledLog.forget(log, "T-4");
    send(log, BOOTH, server.target(BOOTH));
    server.run(Files.readString(Path.of("deploy/postgresql/forget.sql")));
    assertEquals(1, server.number("SELECT count(*) FROM boothlamp.bead"));
    assertEquals(2, server.number("SELECT count(*) FROM boothlamp.reference_weld"));
  }

  @Test
  void shouldHideAForgottenTraineeAtOnceAndLetTheOwnerRemoveTheRows() throws Exception {
    Path log = log(BOOTH, 30);
    send(log, BOOTH, server.target(BOOTH));
    assertTrue(FilledLog.forget(log, "T-4") > 0);
    send(log, BOOTH, server.target(BOOTH));
    ShiftRecords seen = records();
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      assertEquals(reader.read(0, Long.MAX_VALUE).runs(), seen.runs());
      assertEquals(reader.read(0, Long.MAX_VALUE).touches(), seen.touches());
    }
    assertTrue(seen.runs().stream().noneMatch(run -> run.trainee().equals("T-4")));
    assertEquals(30, server.number("SELECT count(*) FROM boothlamp.segment"));
    server.run(Files.readString(Path.of("deploy/postgresql/forget.sql")));
    assertEquals(0, server.number("SELECT count(*) FROM boothlamp.segment WHERE trainee = 'T-4'"));
    new ServerRows(server).assertSame(log, BOOTH);
  }

  private static ShiftRecords records() throws SyncException {
    return PostgresReport.read(server.instructor(), "", 0, Long.MAX_VALUE).records();
  }
}
