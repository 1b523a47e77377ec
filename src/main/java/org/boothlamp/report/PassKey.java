package org.boothlamp.report;

import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * What runs were welded against. The limits belong to it: if a file was changed without a new
 * revision, runs before and after are not comparable. Immutable.
 *
 * @param procedureId procedure, or empty if none was loaded
 * @param revision its revision, or empty
 * @param pass pass name, or empty
 * @param windows the limits; empty if none
 */
public record PassKey(String procedureId, String revision, String pass, List<Window> windows) {

  public PassKey {
    windows = List.copyOf(windows);
  }

  /** The pass a run was welded against. */
  public static PassKey of(RunRecord run) {
    return new PassKey(run.procedureId(), run.procedureRevision(), run.pass(), run.windows());
  }

  /** True if a run was welded against this; cheaper than making its key. */
  boolean isOf(RunRecord run) {
    return pass.equals(run.pass())
        && revision.equals(run.procedureRevision())
        && procedureId.equals(run.procedureId())
        && (windows == run.windows() || windows.equals(run.windows()));
  }

  /** True if no procedure was loaded. */
  public boolean isNone() {
    return procedureId.isEmpty();
  }

  /** The window of a quantity, or null if it was not limited. */
  public Window window(Quantity quantity) {
    for (Window window : windows) {
      if (window.quantity() == quantity) {
        return window;
      }
    }
    return null;
  }
}
