package org.boothlamp.sync;

import java.net.URI;
import java.net.URISyntaxException;

/**
 * Where a database is: {@code postgresql://HOST:PORT/DATABASE}. Immutable.
 *
 * @param host name or address
 * @param port TCP port
 * @param database name of the database
 */
public record PostgresUrl(String host, int port, String database) {

  private static final int HIGHEST_PORT = 65_535;

  /**
   * Reads a URL.
   *
   * @throws IllegalArgumentException with the rule that is broken; never with a password
   */
  public static PostgresUrl parse(String text) {
    URI uri = uri(text);
    if (uri.getRawUserInfo() != null || contains(uri.getRawQuery(), "password")) {
      throw new IllegalArgumentException(
          "must hold no user and no password: they have places of their own");
    }
    String path = uri.getPath() == null ? "" : uri.getPath();
    if (!"postgresql".equals(uri.getScheme())
        || uri.getHost() == null
        || uri.getPort() == 0
        || uri.getPort() > HIGHEST_PORT
        || !path.matches("/[A-Za-z0-9_-]{1,63}")
        || uri.getRawQuery() != null) {
      throw new IllegalArgumentException(
          "must be postgresql://HOST:PORT/DATABASE, but is \"" + text + "\"");
    }
    int port = uri.getPort() < 0 ? PostgresTarget.USUAL_PORT : uri.getPort();
    return new PostgresUrl(uri.getHost(), port, path.substring(1));
  }

  private static URI uri(String text) {
    try {
      return new URI(text);
    } catch (URISyntaxException refused) {
      throw new IllegalArgumentException("must be postgresql://HOST:PORT/DATABASE", refused);
    }
  }

  private static boolean contains(String query, String word) {
    return query != null && query.contains(word);
  }
}
