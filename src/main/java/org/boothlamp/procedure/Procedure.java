package org.boothlamp.procedure;

import java.util.List;
import org.boothlamp.signal.Polarity;

/**
 * The electrical limits of a welding procedure. Immutable.
 *
 * @param id the school's own number
 * @param revision its revision
 * @param process ISO 4063 process
 * @param current polarity the procedure asks for
 * @param source characteristic of the welding machine
 * @param arcOnAmps current from which an arc counts as burning; NaN for the monitor's own setting
 * @param passes at least one, names unique
 */
public record Procedure(
    String id,
    String revision,
    Process process,
    Polarity current,
    Characteristic source,
    double arcOnAmps,
    List<Pass> passes) {

  public Procedure {
    passes = List.copyOf(passes);
  }

  /** The pass of this name, or null if there is none. */
  public Pass pass(String name) {
    for (Pass pass : passes) {
      if (pass.name().equals(name)) {
        return pass;
      }
    }
    return null;
  }
}
