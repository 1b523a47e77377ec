package org.boothlamp.cli;

import java.nio.file.Path;
import org.boothlamp.report.Glance;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.ShiftTime;
import org.boothlamp.sync.PasswordSource;
import org.boothlamp.sync.PostgresGlance;
import org.boothlamp.sync.PostgresReport;
import org.boothlamp.sync.PostgresTarget;
import org.boothlamp.sync.PostgresUrl;
import org.boothlamp.sync.SyncException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that name a database to read from. A password has no place among them. */
final class DatabaseOption {

  @Spec private CommandSpec spec;

  @Option(
      names = "--database",
      required = true,
      paramLabel = "URL",
      description = "postgresql://HOST:PORT/DATABASE, without user and password.")
  private String url;

  @Option(
      names = "--user",
      paramLabel = "ROLE",
      defaultValue = "instructor",
      description = "Role to log in as; default: ${DEFAULT-VALUE}.")
  private String user;

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description = "File with its password, readable by its owner only.")
  private Path passwordFile;

  @Option(
      names = "--certificate-authority",
      paramLabel = "FILE",
      description = "PEM file of the authority that signed the server's certificate.")
  private Path certificateAuthority;

  @Option(
      names = "--booth",
      paramLabel = "ID",
      defaultValue = "",
      description = "Only this booth. Without it: all.")
  private String booth;

  /** The booth asked for, or empty. */
  String booth() {
    return booth;
  }

  /** What the database holds of a span of time. */
  PostgresReport.Found read(ShiftSpan span) throws SyncException {
    return PostgresReport.read(target(), booth, span.fromWallMillis(), span.untilWallMillis());
  }

  /** What a shift of that database is compared with. */
  Glance.Beside beside(ShiftSpan span, ShiftTime time) throws SyncException {
    try (PostgresGlance glance = PostgresGlance.open(target(), booth)) {
      return new Glance.Beside(
          time,
          glance.signIns(ShiftAnswer.signInsFrom(span), span.untilWallMillis()),
          glance.earlierRuns(ShiftAnswer.lookBackFrom(span), span.fromWallMillis()));
    }
  }

  private PostgresTarget target() {
    PostgresUrl parsed = parsed();
    return new PostgresTarget(
        parsed.host(),
        parsed.port(),
        parsed.database(),
        user,
        passwordFile == null ? null : PasswordSource.ofFile(passwordFile),
        certificateAuthority,
        certificateAuthority == null
            ? PostgresTarget.usualTls(parsed.host())
            : PostgresTarget.Tls.CHECKED);
  }

  private PostgresUrl parsed() {
    try {
      return PostgresUrl.parse(url);
    } catch (IllegalArgumentException refused) {
      throw new ParameterException(
          spec.commandLine(), "--database " + refused.getMessage(), refused);
    }
  }
}
