package org.boothlamp.sync;

import java.nio.file.Files;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Properties;
import org.postgresql.Driver;

/** Connects to a database with the password and the protection that the target asks for. */
final class PostgresConnections {

  private static final String CONNECT_SECONDS = "5";

  /** Longest wait for an answer: a batch takes a fraction of it. */
  private static final String ANSWER_SECONDS = "30";

  private PostgresConnections() {}

  static Connection open(PostgresTarget target) throws SyncException {
    return open(target, System.getenv());
  }

  static Connection open(PostgresTarget target, Map<String, String> environment)
      throws SyncException {
    Properties properties = properties(target, environment);
    try {
      return new Driver().connect("jdbc:" + target.name(), properties);
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }

  private static Properties properties(PostgresTarget target, Map<String, String> environment)
      throws SyncException {
    Properties properties = new Properties();
    properties.setProperty("user", target.user());
    if (target.password() != null) {
      properties.setProperty("password", target.password().read(environment));
    }
    properties.setProperty("ApplicationName", "boothlamp");
    properties.setProperty("connectTimeout", CONNECT_SECONDS);
    properties.setProperty("socketTimeout", ANSWER_SECONDS);
    properties.setProperty("tcpKeepAlive", "true");
    properties.setProperty("gssEncMode", "disable");
    // Rows of a batch go in one statement with many rows.
    properties.setProperty("reWriteBatchedInserts", "true");
    protect(properties, target);
    return properties;
  }

  private static void protect(Properties properties, PostgresTarget target) throws SyncException {
    if (target.tls() == PostgresTarget.Tls.OFF) {
      properties.setProperty("sslmode", "disable");
      return;
    }
    properties.setProperty("sslmode", "verify-full");
    if (target.certificateAuthority() == null) {
      properties.setProperty("sslfactory", "org.postgresql.ssl.DefaultJavaSSLFactory");
      return;
    }
    if (!Files.isReadable(target.certificateAuthority())) {
      throw SyncException.setUp(
          "the certificate authority " + target.certificateAuthority() + " cannot be read",
          "put the PEM file of the school's authority there, or correct the path",
          null);
    }
    properties.setProperty("sslrootcert", target.certificateAuthority().toString());
  }
}
