package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.boothlamp.testing.SyncServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The certificate of a real server: the right one, one of another name, of another authority. */
class PostgresTlsIT {

  private static final String BOOTH = "B-07";

  @TempDir static Path folder;
  @TempDir static Path plainFolder;
  private static SyncServer server;

  @BeforeAll
  static void startServer() throws Exception {
    openssl(
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "2",
        "-subj",
        "/CN=School",
        "-keyout",
        "ca.key",
        "-out",
        "ca.pem");
    openssl(
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "2",
        "-subj",
        "/CN=Other",
        "-keyout",
        "other.key",
        "-out",
        "other.pem");
    openssl(
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "2",
        "-subj",
        "/CN=localhost",
        "-addext",
        "subjectAltName=DNS:localhost",
        "-addext",
        "basicConstraints=critical,CA:FALSE",
        "-CA",
        "ca.pem",
        "-CAkey",
        "ca.key",
        "-keyout",
        "server.key",
        "-out",
        "server.pem");
    server =
        SyncServer.start(
            folder,
            Map.of(
                "ssl", "on",
                "ssl_cert_file", folder.resolve("server.pem").toString(),
                "ssl_key_file", folder.resolve("server.key").toString()));
    server.addBooth(BOOTH);
  }

  private static void openssl(String... arguments) throws Exception {
    String[] command = new String[arguments.length + 1];
    command[0] = "openssl";
    System.arraycopy(arguments, 0, command, 1, arguments.length);
    Process process =
        new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    assertEquals(0, process.waitFor(), said);
  }

  @AfterAll
  static void stopServer() throws Exception {
    server.close();
  }

  private static PostgresTarget target(SyncServer to, String host, String authority) {
    return new PostgresTarget(
        host,
        to.port(),
        SyncServer.DATABASE,
        "booth-" + BOOTH,
        PasswordSource.ofFile(to.passwordFile(SyncServer.PASSWORD)),
        authority == null ? null : folder.resolve(authority),
        PostgresTarget.Tls.CHECKED);
  }

  private static SyncException refusal(PostgresTarget target) {
    SyncException refused =
        assertThrows(SyncException.class, () -> new PostgresDestination(target).open());
    assertEquals(SyncException.Kind.SET_UP, refused.kind(), refused.getMessage());
    return refused;
  }

  @Test
  void shouldConnectToAServerWithTheRightCertificate() throws Exception {
    try (PostgresDestination destination =
        new PostgresDestination(target(server, "localhost", "ca.pem"))) {
      destination.open();
      assertTrue(server.number("SELECT count(*) FROM pg_stat_ssl WHERE ssl") >= 1);
    }
  }

  @Test
  void shouldRefuseACertificateOfAnotherName() {
    String message = refusal(target(server, "127.0.0.1", "ca.pem")).getMessage();
    assertTrue(message.contains("is not trusted"), message);
    assertTrue(message.contains("connect to the host name"), message);
  }

  @Test
  void shouldRefuseACertificateOfAnotherAuthority() {
    String message = refusal(target(server, "localhost", "other.pem")).getMessage();
    assertTrue(message.contains("is not trusted"), message);
  }

  @Test
  void shouldRefuseACertificateThatJavaDoesNotKnow() {
    String message = refusal(target(server, "localhost", null)).getMessage();
    assertTrue(message.contains("is not trusted"), message);
  }

  @Test
  void shouldRefuseAnAuthorityThatIsNotThere() {
    String message = refusal(target(server, "localhost", "none.pem")).getMessage();
    assertTrue(message.contains("none.pem cannot be read"), message);
  }

  @Test
  void shouldRefuseAServerWithoutEncryption() throws Exception {
    try (SyncServer plain = SyncServer.start(plainFolder)) {
      plain.addBooth(BOOTH);
      String message = refusal(target(plain, "localhost", "ca.pem")).getMessage();
      assertTrue(message.contains("offers no encrypted connection"), message);
    }
  }
}
