package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The colours of the pages. */
class ScreenColourTest {

  /**
   * Relative luminance as WCAG 2.2 defines it (from memory), with the threshold 0.04045 of sRGB.
   */
  private static double luminance(String hex) {
    double sum = 0;
    double[] weights = {0.2126, 0.7152, 0.0722};
    for (int k = 0; k < 3; k++) {
      double part = Integer.parseInt(hex.substring(1 + 2 * k, 3 + 2 * k), 16) / 255.0;
      double linear = part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
      sum += weights[k] * linear;
    }
    return sum;
  }

  private static double contrast(String one, String other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  /** Black on white is 21, and #777777 just misses 4.5 on white (from memory). */
  @ParameterizedTest
  @CsvSource({"'#000000', '#ffffff', 21.0", "'#777777', '#ffffff', 4.48"})
  void shouldComputeContrastAsOthersDo(String one, String other, double ratio) {
    assertEquals(ratio, contrast(one, other), 0.01);
  }

  @ParameterizedTest
  @EnumSource
  void shouldStandOutFromItsGround(ScreenColour colour) {
    if (colour.ground() != null) {
      double ratio = contrast(colour.hex(), colour.ground().hex());
      assertTrue(ratio >= colour.leastContrast(), colour + " has " + ratio);
    }
  }

  /** Text grounds are all light: what stands on one of them may touch its neighbour. */
  @Test
  void shouldKeepTextReadableOnEveryLightGround() {
    for (ScreenColour ground :
        List.of(ScreenColour.PAPER, ScreenColour.PANEL, ScreenColour.PROBLEM_GROUND)) {
      assertTrue(contrast(ScreenColour.INK.hex(), ground.hex()) >= ScreenColour.TEXT);
      assertTrue(contrast(ScreenColour.LINK.hex(), ground.hex()) >= ScreenColour.TEXT);
    }
  }

  /** A lit light against an unlit one: the difference must not be one of hue alone. */
  @ParameterizedTest
  @EnumSource(names = {"RED", "AMBER", "GREEN"})
  void shouldLightUpForEyesThatSeeNoColour(ScreenColour light) {
    double lit = contrast(light.hex(), ScreenColour.HOUSING.hex());
    assertTrue(lit >= 5, light + " has " + lit + " against the housing, which an unlit one shows");
  }

  @Test
  void shouldNameEveryColourOfTheStyleSheet() {
    String css = StaticFiles.resource("page.css");
    Matcher used = Pattern.compile("var\\((--[a-z-]+)\\)").matcher(css);
    List<String> known = Arrays.stream(ScreenColour.values()).map(ScreenColour::variable).toList();
    while (used.find()) {
      assertTrue(known.contains(used.group(1)), "unknown: " + used.group(1));
    }
    assertTrue(
        !Pattern.compile("#[0-9a-f]{3,6}\\b").matcher(css).find(), "a colour without a name");
  }
}
