package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.acquisition.BadgeEnding;

/** Reads the section [badge]. Confined to one thread. */
final class BadgeSection {

  private enum Kind implements SectionKinds.Kind {
    SERIAL("serial", List.of("port", "baud", "ending")),
    KEYBOARD("keyboard", List.of("device"));

    private final String word;
    private final List<String> keys;

    Kind(String word, List<String> keys) {
      this.word = word;
      this.keys = keys;
    }

    @Override
    public String word() {
      return word;
    }

    @Override
    public List<String> keys() {
      return keys;
    }
  }

  private static final Range BAUD = new Range(1_200, 4_000_000, "");
  private static final int USUAL_BAUD = 9_600;
  private static final String EXAMPLE_PORT = "/dev/serial/by-id/usb-badge-reader";
  private static final String EXAMPLE_DEVICE = "/dev/input/by-id/usb-badge-reader-event-kbd";

  private final Section document;
  private final SettingsPaths paths;
  private final Section section;

  BadgeSection(Section document, SettingsPaths paths) {
    this.document = document;
    this.paths = paths;
    section = document.section("badge");
  }

  /**
   * The settings, or null if the file has no such section or its kind is not known.
   *
   * @param source whose port the reader cannot have
   */
  BadgeSettings read(SourceSettings source) {
    if (!document.has("badge")) {
      return null;
    }
    Kind kind = SectionKinds.read(section, Kind.values());
    if (kind == null) {
      return null;
    }
    BadgeSettings settings = kind == Kind.SERIAL ? serial(source) : keyboard();
    SectionKinds.refuseKeysOfOthers(section, Kind.values(), kind);
    return settings;
  }

  private BadgeSettings serial(SourceSettings source) {
    String port = section.requiredText("port", TextRule.PATH, EXAMPLE_PORT);
    if (source instanceof SerialSourceSettings frontEnd && frontEnd.port().equals(port)) {
      section.refuse(
          "port",
          "must be another than source.port, " + Literal.of(port) + ": the front end is there",
          "write the badge reader's own port (ls /dev/serial/by-id)");
    }
    Map<String, BadgeEnding> endings = new LinkedHashMap<>();
    for (BadgeEnding ending : BadgeEnding.values()) {
      endings.put(ending.word(), ending);
    }
    int baud = (int) section.whole("baud", BAUD, USUAL_BAUD);
    return new BadgeSettings(
        paths.requiredPath(section, "port", EXAMPLE_PORT),
        new BadgeSettings.SerialLineSettings(
            baud, section.word("ending", endings, BadgeEnding.LINE)),
        table());
  }

  private BadgeSettings keyboard() {
    return new BadgeSettings(paths.requiredPath(section, "device", EXAMPLE_DEVICE), null, table());
  }

  private Path table() {
    return section.has("table") ? paths.path(section, "table", "badges.toml") : null;
  }
}
