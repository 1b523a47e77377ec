package org.boothlamp.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.BoothSettingsFile;
import picocli.CommandLine.Option;

/** The option that names the settings file. */
final class SettingsOption {

  private static final Path INSTALLED = Path.of("/etc/boothlamp/booth.toml");
  private static final Path HERE = Path.of("booth.toml");

  @Option(
      names = {"-s", "--settings"},
      paramLabel = "FILE",
      description = {
        "The booth's settings file. Without it: booth.toml in this folder if there is one, else"
            + " /etc/boothlamp/booth.toml."
      })
  private Path file;

  /** Reads the file; throws SettingsException if it is refused. */
  BoothSettings read() {
    return read(file);
  }

  /** The same for a command with an option of its own; {@code file} may be null. */
  static BoothSettings read(Path file) {
    return BoothSettingsFile.read(path(file));
  }

  private static Path path(Path file) {
    if (file != null) {
      return file;
    }
    return Files.exists(HERE) ? HERE : INSTALLED;
  }

  /** The log that settings name. */
  static Path logOf(BoothSettings settings) {
    return settings.logFolder().resolve(BoothLog.FILE_NAME);
  }
}
