package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.boothlamp.sync.FolderTarget;
import org.boothlamp.sync.PasswordSource;
import org.boothlamp.sync.PostgresTarget;
import org.boothlamp.sync.PostgresUrl;
import org.boothlamp.sync.SyncTarget;

/** Reads the section [sync]. Confined to one thread. */
final class SyncReader {

  private enum Kind implements SectionKinds.Kind {
    POSTGRESQL(
        "postgresql",
        List.of("url", "user", "password_file", "credential", "certificate_authority", "tls")),
    FOLDER("folder", List.of("folder"));

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

  private static final Range EVERY = new Range(1, 86_400, "s");
  private static final double USUAL_EVERY_SECONDS = 60;
  private static final String EXAMPLE_URL = "postgresql://db.school.example:5432/boothlamp";
  private static final TextRule URL =
      new TextRule("such as " + EXAMPLE_URL, Pattern.compile("\\S{1,300}"));
  private static final TextRule CREDENTIAL =
      new TextRule("1 to 100 letters, digits, dots, hyphens, _", Pattern.compile("[\\w.-]{1,100}"));

  private final Section document;
  private final SettingsPaths paths;
  private final String boothId;
  private final Section section;

  SyncReader(Section document, SettingsPaths paths, String boothId) {
    this.document = document;
    this.paths = paths;
    this.boothId = boothId;
    section = document.section("sync");
  }

  /** The settings, or null if the file has no such section or its kind is not known. */
  SyncSettings read() {
    if (!document.has("sync")) {
      return null;
    }
    Kind kind = SectionKinds.read(section, Kind.values());
    if (kind == null) {
      return null;
    }
    SyncTarget target = kind == Kind.FOLDER ? folder() : postgres();
    SectionKinds.refuseKeysOfOthers(section, Kind.values(), kind);
    refusePassword();
    return new SyncSettings(target, section.number("every_s", EVERY, USUAL_EVERY_SECONDS));
  }

  private FolderTarget folder() {
    return new FolderTarget(paths.requiredPath(section, "folder", "/media/stick/boothlamp"));
  }

  private PostgresTarget postgres() {
    PostgresUrl url = url(section.requiredText("url", URL, EXAMPLE_URL));
    String user = section.text("user", TextRule.NAME, "booth-" + boothId, "booth-B-07");
    boolean usual = PostgresTarget.usualTls(url.host()) == PostgresTarget.Tls.CHECKED;
    boolean tls = section.flag("tls", usual);
    return new PostgresTarget(
        url.host(),
        url.port(),
        url.database(),
        user,
        password(),
        certificateAuthority(tls),
        tls ? PostgresTarget.Tls.CHECKED : PostgresTarget.Tls.OFF);
  }

  private PostgresUrl url(String text) {
    try {
      return PostgresUrl.parse(text);
    } catch (IllegalArgumentException refused) {
      section.refuse("url", refused.getMessage(), "write e.g. url = " + Literal.of(EXAMPLE_URL));
      return PostgresUrl.parse(EXAMPLE_URL);
    }
  }

  private PasswordSource password() {
    String credential = section.text("credential", CREDENTIAL, null, "boothlamp-sync");
    if (!section.has("password_file")) {
      return credential == null ? null : PasswordSource.ofCredential(credential);
    }
    if (credential != null) {
      section.refuse("credential", "must not stand beside password_file", "remove one of the two");
    }
    return PasswordSource.ofFile(
        paths.requiredPath(section, "password_file", "/etc/boothlamp/sync-password"));
  }

  private Path certificateAuthority(boolean tls) {
    if (!section.has("certificate_authority")) {
      return null;
    }
    if (!tls) {
      section.refuse(
          "certificate_authority",
          "has no meaning without TLS",
          "write tls = true, or remove certificate_authority");
    }
    return paths.requiredPath(section, "certificate_authority", "/etc/boothlamp/school-ca.pem");
  }

  private void refusePassword() {
    section.refuseIfGiven(
        "password",
        "must not stand in this file: others may read it, so it goes into a file of its own, chmod 600,"
            + " named by password_file");
  }
}
