package org.boothlamp.sync;

import java.security.cert.CertificateException;
import java.sql.SQLException;
import javax.net.ssl.SSLException;

/** Sorts a database's errors by what happens next, and says them in plain words. */
final class PostgresErrors {

  private static final String STEPS = "let its owner run the files of deploy/postgresql";

  private PostgresErrors() {}

  static SyncException explain(SQLException failure, PostgresTarget target) {
    String state = failure.getSQLState() == null ? "" : failure.getSQLState();
    String where = target.name();
    String said = " (" + firstLine(failure) + ")";
    return switch (state) {
      case "28P01", "28000" ->
          SyncException.setUp(
              where + " refuses role \"" + target.user() + "\" or its password" + said,
              "check user and password file against the role on the server, and its pg_hba.conf",
              failure);
      case "3D000" ->
          SyncException.setUp(
              where + " has no such database" + said,
              "correct the name behind the last / of the url, or make the database",
              failure);
      case "42P01", "3F000" -> SyncException.setUp(where + " lacks a table" + said, STEPS, failure);
      case "42703", "42804" ->
          SyncException.setUp(
              where + " has an older schema than this program" + said, STEPS, failure);
      case "42501" -> rights(failure, target, said);
      default -> other(failure, target, state, said);
    };
  }

  private static SyncException rights(SQLException failure, PostgresTarget target, String said) {
    boolean ofAnother = firstLine(failure).contains("row-level security");
    return SyncException.setUp(
        target.name()
            + (ofAnother ? " lets role \"" : " gives role \"")
            + target.user()
            + (ofAnother ? "\" add no rows of this booth" : "\" too few rights")
            + said,
        ofAnother
            ? "log in as the role \"booth-ID\" of this very booth"
            : "make it a member of boothlamp_booth to send, of boothlamp_instructor to read",
        failure);
  }

  private static SyncException other(
      SQLException failure, PostgresTarget target, String state, String said) {
    String kind = state.length() < 2 ? "" : state.substring(0, 2);
    return switch (kind) {
      // data exception, integrity constraint, program limit: of the row, every time
      case "22", "23", "54" -> SyncException.row(firstLine(failure), failure);
      case "08" -> connection(failure, target, said);
      default ->
          SyncException.later(
              target.name() + " did not take the rows" + said, "look at the server", failure);
    };
  }

  private static SyncException connection(
      SQLException failure, PostgresTarget target, String said) {
    String message = firstLine(failure);
    if (message.contains("does not support SSL")) {
      return SyncException.setUp(
          target.name() + " offers no encrypted connection",
          "switch ssl on in the server's postgresql.conf",
          failure);
    }
    if (isOfCertificate(failure)) {
      return SyncException.setUp(
          "the certificate of " + target.name() + " is not trusted" + said,
          "give the authority that signed it as certificate_authority, and connect to the host name"
              + " that stands in it",
          failure);
    }
    return SyncException.later(
        target.name() + " is not reached" + said,
        "check that the server runs and the network between",
        failure);
  }

  private static boolean isOfCertificate(SQLException failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      String message = String.valueOf(cause.getMessage());
      if (cause instanceof CertificateException
          || (cause instanceof SSLException && message.contains("PKIX"))
          || (message.contains("hostname") && message.contains("could not be verified"))) {
        return true;
      }
    }
    return false;
  }

  /** The server's own words; what follows in further lines is of no help to people. */
  private static String firstLine(SQLException failure) {
    SQLException told = failure.getNextException() == null ? failure : failure.getNextException();
    String message = String.valueOf(told.getMessage());
    return message.lines().findFirst().orElse(message);
  }
}
