package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.Map;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Quantity;

/**
 * A procedure and where it stands, so that what is found wrong with it later can name the line.
 * Immutable.
 *
 * @param file the file, as it was asked for
 * @param procedure what the file says
 * @param windowLines line of each window, by {@link #keyOf}
 */
public record LoadedProcedure(Path file, Procedure procedure, Map<String, Integer> windowLines) {

  public LoadedProcedure {
    windowLines = Map.copyOf(windowLines);
  }

  /** How messages name the window of a pass: {@code pass[fill].amps}. */
  public static String keyOf(Pass pass, Quantity quantity) {
    return "pass[" + pass.name() + "]." + quantity.key();
  }

  /** Line of a window, from 1; {@link Problem#WHOLE_FILE} if the pass does not limit it. */
  public int lineOf(Pass pass, Quantity quantity) {
    return windowLines.getOrDefault(keyOf(pass, quantity), Problem.WHOLE_FILE);
  }
}
