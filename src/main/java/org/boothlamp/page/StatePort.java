package org.boothlamp.page;

import java.util.Map;

/** How the monitor itself is, for the technician. Called from several threads at once. */
@FunctionalInterface
public interface StatePort {

  /** Phrase keys of the kind {@code page.state.…} and values for people, in the order to show. */
  Map<String, String> state();
}
