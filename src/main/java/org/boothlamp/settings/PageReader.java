package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.regex.Pattern;

/** Reads the section [page]. Confined to one thread. */
final class PageReader {

  private static final String LOOPBACK = "127.0.0.1";
  private static final TextRule ADDRESS =
      new TextRule(
          "an IP address such as 127.0.0.1 or 0.0.0.0 (all of this computer)",
          Pattern.compile(
              "((25[0-5]|2[0-4]\\d|1?\\d?\\d)\\.){3}(25[0-5]|2[0-4]\\d|1?\\d?\\d)|::|::1"
                  + "|[0-9a-f]{1,4}(:[0-9a-f]{0,4}){2,7}"));
  private static final String EXAMPLE_ORIGIN = "https://b02.school.example:8443";
  private static final TextRule ORIGIN =
      new TextRule(
          "scheme, host and port such as " + EXAMPLE_ORIGIN + ", in small letters, no / at the end",
          Pattern.compile("https?://([a-z0-9.-]{1,200}|\\[[0-9a-f:]{2,40}])(:[0-9]{1,5})?"));

  private final Section document;
  private final SettingsPaths paths;
  private final Section section;

  PageReader(Section document, SettingsPaths paths) {
    this.document = document;
    this.paths = paths;
    section = document.section("page");
  }

  /** The settings, or null if the file has no such section. */
  PageSettings read() {
    if (!document.has("page")) {
      return null;
    }
    PageSettings page =
        new PageSettings(
            section.text("address", ADDRESS, LOOPBACK, LOOPBACK),
            (int) section.whole("port", new Range(0, 65_535, ""), 8_480),
            file("trainee_token_file"),
            file("instructor_token_file"),
            file("technician_token_file"),
            file("certificate"),
            file("certificate_key"),
            section.texts("booths", ORIGIN, EXAMPLE_ORIGIN),
            section.texts("class_view_from", ORIGIN, EXAMPLE_ORIGIN),
            (int) section.whole("clients", new Range(1, 100, "screens"), 40));
    refuseOpenDoors(page);
    refuseHalfACertificate();
    refuseSecretsHere();
    return page;
  }

  private Path file(String key) {
    return section.has(key)
        ? paths.requiredPath(section, key, "/etc/boothlamp/page-" + key.replace('_', '-'))
        : null;
  }

  private void refuseOpenDoors(PageSettings page) {
    if (!page.isLoopback() && !page.hasTokens() && section.isSound("address")) {
      section.refuse(
          "address",
          "is open to other computers, so that roles need tokens, but no token file is named",
          "name trainee_token_file, instructor_token_file, technician_token_file, or one of them; or"
              + " write address = \""
              + LOOPBACK
              + "\"");
    }
  }

  private void refuseHalfACertificate() {
    if (section.has("certificate") != section.has("certificate_key")) {
      String there = section.has("certificate") ? "certificate" : "certificate_key";
      section.refuse(
          there, "must stand beside the other of certificate and certificate_key", "add the other");
    }
  }

  private void refuseSecretsHere() {
    for (String role : new String[] {"token", "trainee_token", "instructor_token"}) {
      section.refuseIfGiven(
          role,
          "must not stand in this file: others may read it, so it goes into a file of its own, chmod"
              + " 600, named by "
              + (role.equals("token") ? "trainee_token" : role)
              + "_file");
    }
  }
}
