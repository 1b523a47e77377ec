package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {

  private static final List<String> KEYS = List.of("port", "baud", "arc_on_a", "amps");

  @Test
  void shouldCountEditsAsInThePublishedExamples() {
    // kitten to sitting takes 3, the textbook example of Levenshtein's distance
    assertEquals(3, Nearest.edits("kitten", "sitting"));
    assertEquals(0, Nearest.edits("amps", "amps"));
    assertEquals(4, Nearest.edits("", "amps"));
  }

  @Test
  void shouldGuessAWordThatIsNear() {
    assertEquals("did you mean baud?", Nearest.hint("buad", KEYS));
    assertEquals("did you mean arc_on_a?", Nearest.hint("arc_on_amps", KEYS));
    assertEquals("did you mean amps?", Nearest.hint("amp", KEYS));
  }

  @Test
  void shouldNotGuessWhenNoWordIsNear() {
    assertEquals("", Nearest.hint("colour", KEYS));
    assertEquals("", Nearest.hint("x", List.of()));
  }
}
