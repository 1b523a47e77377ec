package org.boothlamp.settings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Of a section whose key {@code kind} decides which other keys it has. Stateless.
 *
 * <p>Keys that belong to another kind are refused with both kinds, not as unknown.
 */
final class SectionKinds {

  /** One kind. */
  interface Kind {

    /** As the file says it. */
    String word();

    /** Keys that only this kind has. */
    List<String> keys();
  }

  private SectionKinds() {}

  /** The kind, or null if it is missing or not known: then the rest of the section is let pass. */
  static <K extends Kind> K read(Section section, K[] kinds) {
    Map<String, K> words = new LinkedHashMap<>();
    for (K kind : kinds) {
      words.put(kind.word(), kind);
    }
    K kind = section.requiredWord("kind", words);
    if (section.isSound("kind")) {
      return kind;
    }
    section.passOver();
    return null;
  }

  /** To be called when all keys of the kind have been read. */
  static <K extends Kind> void refuseKeysOfOthers(Section section, K[] kinds, K kind) {
    for (K other : kinds) {
      for (String key : other.keys()) {
        if (other != kind) {
          section.refuseIfGiven(
              key, "belongs to kind \"" + other.word() + "\", but kind is \"" + kind.word() + "\"");
        }
      }
    }
  }
}
