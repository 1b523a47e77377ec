package org.boothlamp.settings;

import java.nio.file.Path;

/** Reads paths; those that do not begin at the root begin at the folder of the settings file. */
final class SettingsPaths {

  private final Path settingsFile;

  SettingsPaths(Path settingsFile) {
    this.settingsFile = settingsFile;
  }

  Path path(Section section, String key, String byDefault) {
    return resolve(section.text(key, TextRule.PATH, byDefault, byDefault));
  }

  Path requiredPath(Section section, String key, String example) {
    return resolve(section.requiredText(key, TextRule.PATH, example));
  }

  private Path resolve(String path) {
    return settingsFile.resolveSibling(path).normalize();
  }
}
