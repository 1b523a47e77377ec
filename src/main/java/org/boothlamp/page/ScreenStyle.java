package org.boothlamp.page;

/**
 * The style sheet of the pages: the colours by name, then page.css and replay.css, which name no
 * other.
 */
final class ScreenStyle {

  private ScreenStyle() {}

  static String sheet() {
    StringBuilder sheet = new StringBuilder(":root {\n");
    for (ScreenColour colour : ScreenColour.values()) {
      sheet.append("  ").append(colour.variable()).append(": ").append(colour.hex()).append(";\n");
    }
    return sheet
        .append("}\n")
        .append(StaticFiles.resource("page.css"))
        .append(StaticFiles.resource("replay.css"))
        .toString();
  }
}
