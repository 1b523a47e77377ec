package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;

/** Writes a file into a folder, has it read, and shows what a person would read of it. */
final class Refusals {

  private final Path folder;
  private final String name;
  private final Function<Path, ?> reader;

  Refusals(Path folder, String name, Function<Path, ?> reader) {
    this.folder = folder;
    this.name = name;
    this.reader = reader;
  }

  Path write(String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** The message, with the folder of the test left out. */
  String of(String text) {
    return ofFile(write(text));
  }

  String ofFile(Path file) {
    SettingsException refused =
        assertThrows(SettingsException.class, () -> reader.apply(file), "should be refused");
    return refused.getMessage().replace(folder + "/", "");
  }
}
