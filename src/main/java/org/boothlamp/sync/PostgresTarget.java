package org.boothlamp.sync;

import java.nio.file.Path;
import java.util.Locale;

/**
 * A database that speaks PostgreSQL's protocol. Immutable.
 *
 * @param host name or address, as the certificate has it
 * @param port TCP port
 * @param database name of the database
 * @param user role to log in as
 * @param password where its password is; null for a server that asks for none
 * @param certificateAuthority PEM file of the authority that signed the server's certificate; null
 *     for those that Java knows
 * @param tls whether the connection is encrypted and the certificate checked
 */
public record PostgresTarget(
    String host,
    int port,
    String database,
    String user,
    PasswordSource password,
    Path certificateAuthority,
    Tls tls)
    implements SyncTarget {

  /** PostgreSQL's own port. */
  public static final int USUAL_PORT = 5432;

  /** Whether the connection is protected. */
  public enum Tls {
    /** Encrypted; the certificate must be signed by a known authority and name the host. */
    CHECKED,
    /** Plain. */
    OFF
  }

  /** What a host gets unless the settings say otherwise: only this computer itself goes without. */
  public static Tls usualTls(String host) {
    return isLoopback(host) ? Tls.OFF : Tls.CHECKED;
  }

  private static boolean isLoopback(String host) {
    String name = host.toLowerCase(Locale.ROOT);
    return name.equals("localhost")
        || name.equals("::1")
        || name.equals("[::1]")
        || name.matches("127(\\.\\d{1,3}){3}");
  }

  /** True if rows go over a network for everybody to read and change. */
  public boolean isOpenToOthers() {
    return tls == Tls.OFF && !isLoopback(host);
  }

  @Override
  public String name() {
    return "postgresql://" + host + ":" + port + "/" + database;
  }
}
