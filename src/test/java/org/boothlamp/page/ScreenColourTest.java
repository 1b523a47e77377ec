package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boothlamp.testing.Contrast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The colours of the pages. */
class ScreenColourTest {

  /** Black on white is 21, and #777777 just misses 4.5 on white (from memory). */
  @ParameterizedTest
  @CsvSource({"'#000000', '#ffffff', 21.0", "'#777777', '#ffffff', 4.48"})
  void shouldComputeContrastAsOthersDo(String one, String other, double ratio) {
    assertEquals(ratio, Contrast.of(one, other), 0.01);
  }

  @ParameterizedTest
  @EnumSource
  void shouldStandOutFromItsGround(ScreenColour colour) {
    if (colour.ground() != null) {
      double ratio = Contrast.of(colour.hex(), colour.ground().hex());
      assertTrue(ratio >= colour.leastContrast(), colour + " has " + ratio);
    }
  }

  /** Text grounds are all light: what stands on one of them may touch its neighbour. */
  @Test
  void shouldKeepTextReadableOnEveryLightGround() {
    for (ScreenColour ground :
        List.of(ScreenColour.PAPER, ScreenColour.PANEL, ScreenColour.PROBLEM_GROUND)) {
      assertTrue(Contrast.of(ScreenColour.INK.hex(), ground.hex()) >= ScreenColour.TEXT);
      assertTrue(Contrast.of(ScreenColour.LINK.hex(), ground.hex()) >= ScreenColour.TEXT);
    }
  }

  /** A lit light against an unlit one: the difference must not be one of hue alone. */
  @ParameterizedTest
  @EnumSource(names = {"RED", "AMBER", "GREEN"})
  void shouldLightUpForEyesThatSeeNoColour(ScreenColour light) {
    double lit = Contrast.of(light.hex(), ScreenColour.HOUSING.hex());
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
