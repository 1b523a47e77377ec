package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.boothlamp.report.Colour;
import org.junit.jupiter.api.Test;

/** When answers are coloured; the convention for NO_COLOR is that of no-color.org. */
class TerminalTest {

  @Test
  void shouldColourOnATerminalOnly() {
    assertEquals(Colour.ANSI, Terminal.colour(true, Map.of("TERM", "xterm")));
    assertEquals(Colour.PLAIN, Terminal.colour(false, Map.of("TERM", "xterm")));
  }

  @Test
  void shouldRespectNoColorWhateverItsValueButEmpty() {
    assertEquals(Colour.PLAIN, Terminal.colour(true, Map.of("NO_COLOR", "1")));
    assertEquals(Colour.PLAIN, Terminal.colour(true, Map.of("NO_COLOR", "0")));
    assertEquals(Colour.ANSI, Terminal.colour(true, Map.of("NO_COLOR", "")));
  }

  @Test
  void shouldNotColourATerminalThatHasNone() {
    assertEquals(Colour.PLAIN, Terminal.colour(true, Map.of("TERM", "dumb")));
  }
}
