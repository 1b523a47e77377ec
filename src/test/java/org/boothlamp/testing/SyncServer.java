package org.boothlamp.testing;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.boothlamp.sync.PasswordSource;
import org.boothlamp.sync.PostgresTarget;

/**
 * A real PostgreSQL server with the tables and roles of deploy/postgresql, which can be killed and
 * started again on the same data. Every role's password is {@link #PASSWORD}.
 */
public final class SyncServer implements AutoCloseable {

  /** Of every role but the superuser. */
  public static final String PASSWORD = "sesame, open";

  /** Database with the schema. */
  public static final String DATABASE = "postgres";

  private static final Path SCRIPTS = Path.of("deploy/postgresql");

  /** In the order of the README there. */
  private static final List<String> IN_ORDER =
      List.of(
          "001-schema.sql",
          "roles.sql",
          "002-calibration.sql",
          "003-time.sql",
          "004-bead.sql",
          "row-security.sql");

  private static final String HBA =
      """
      local all all trust
      host all postgres 127.0.0.1/32 trust
      host all all 127.0.0.1/32 scram-sha-256
      host all all ::1/128 scram-sha-256
      """;

  private final Path folder;
  private final Map<String, String> config = new TreeMap<>();
  private EmbeddedPostgres server;

  private SyncServer(Path folder) {
    this.folder = folder;
  }

  /** A server in an empty folder, with schema and roles. */
  public static SyncServer start(Path folder) throws Exception {
    return start(folder, Map.of());
  }

  /** The same with more settings of the server. */
  public static SyncServer start(Path folder, Map<String, String> more) throws Exception {
    SyncServer server = new SyncServer(folder);
    Path hba = Files.writeString(folder.resolve("hba.conf"), HBA);
    openUp(hba);
    server.config.put("hba_file", hba.toString());
    server.config.putAll(more);
    server.begin(0);
    for (String script : IN_ORDER) {
      server.run(Files.readString(SCRIPTS.resolve(script)));
    }
    server.run(
        "CREATE ROLE instructor LOGIN IN ROLE boothlamp_instructor PASSWORD '" + PASSWORD + "'");
    return server;
  }

  /** The server runs as another user, who has to get at files of the test. */
  public static void openUp(Path file) throws IOException {
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    Files.setPosixFilePermissions(file.getParent(), PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private void begin(int port) throws IOException {
    EmbeddedPostgres.Builder builder =
        EmbeddedPostgres.builder()
            .setPort(port)
            .setDataDirectory(folder.resolve("data"))
            .setCleanDataDirectory(false)
            .setServerConfig("fsync", "off")
            // What the library sets; a commit may then be lost when the server is killed.
            .setServerConfig("synchronous_commit", "off");
    config.forEach(builder::setServerConfig);
    server = builder.start();
  }

  /** Kills every process of it, as a power loss would. */
  public void kill() throws Exception {
    long pid =
        Long.parseLong(Files.readAllLines(folder.resolve("data/postmaster.pid")).get(0).strip());
    ProcessHandle postmaster = ProcessHandle.of(pid).orElseThrow();
    List<ProcessHandle> all = new ArrayList<>(postmaster.descendants().toList());
    all.add(postmaster);
    all.forEach(ProcessHandle::destroyForcibly);
    for (ProcessHandle process : all) {
      process.onExit().get();
    }
    Files.deleteIfExists(folder.resolve("data/postmaster.pid"));
  }

  /** Starts it again after {@link #kill}, at the same port. */
  public void startAgain() throws IOException {
    // Gives back the lock on the data; there is nothing left to stop.
    server.close();
    begin(server.getPort());
  }

  /** TCP port. */
  public int port() {
    return server.getPort();
  }

  /** Makes the login of a booth. */
  public void addBooth(String booth) {
    run(
        "CREATE ROLE \"booth-"
            + booth
            + "\" LOGIN IN ROLE boothlamp_booth PASSWORD '"
            + PASSWORD
            + "'");
  }

  /** Where a booth sends to, directly. */
  public PostgresTarget target(String booth) {
    return target(booth, port());
  }

  /** Where a booth sends to, through a port of a proxy. */
  public PostgresTarget target(String booth, int port) {
    return new PostgresTarget(
        "127.0.0.1",
        port,
        DATABASE,
        "booth-" + booth,
        PasswordSource.ofFile(passwordFile(PASSWORD)),
        null,
        PostgresTarget.Tls.OFF);
  }

  /** Where an instructor reads. */
  public PostgresTarget instructor() {
    PostgresTarget booth = target("");
    return new PostgresTarget(
        booth.host(),
        booth.port(),
        booth.database(),
        "instructor",
        booth.password(),
        null,
        booth.tls());
  }

  /** A file with a password that only its owner may read. */
  public Path passwordFile(String password) {
    try {
      Path file = folder.resolve("password-" + Integer.toHexString(password.hashCode()));
      if (Files.exists(file)) {
        return file;
      }
      Files.writeString(file, password + "\n");
      return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A connection of the superuser. */
  public Connection connect() throws SQLException {
    return DriverManager.getConnection(url() + "?user=postgres");
  }

  /** A connection of any other role. */
  public Connection connect(String role) throws SQLException {
    return DriverManager.getConnection(url(), role, PASSWORD);
  }

  /** JDBC address of the database. */
  private String url() {
    return "jdbc:postgresql://127.0.0.1:" + port() + "/" + DATABASE;
  }

  /** Statements of the superuser. */
  public void run(String sql) {
    try (Connection connection = connect();
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new AssertionError(sql, e);
    }
  }

  /** A number that the superuser reads. */
  public long number(String sql) {
    try (Connection connection = connect();
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      rows.next();
      return rows.getLong(1);
    } catch (SQLException e) {
      throw new AssertionError(sql, e);
    }
  }

  /** Removes all rows that booths have sent. */
  public void empty() {
    run(
        "TRUNCATE boothlamp.boot, boothlamp.sign_in, boothlamp.touch, boothlamp.event,"
            + " boothlamp.segment, boothlamp.segment_window, boothlamp.excursion, boothlamp.trace,"
            + " boothlamp.bead, boothlamp.reference_weld,"
            + " boothlamp.forgotten, boothlamp.calibration, boothlamp.calibration_point,"
            + " boothlamp.calibration_discard, boothlamp.calibration_finish,"
            + " boothlamp.calibration_withdrawal, boothlamp.calibration_check");
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
