package org.boothlamp.report;

/**
 * What people said of a run after it was welded. Immutable.
 *
 * @param bead its bead as entered last; null if nobody did
 * @param reference the mark of a reference weld; null if it is none
 */
public record RunNotes(EnteredBead bead, ReferenceWeld reference) {

  /** Of a run of which nobody said anything. */
  public static final RunNotes NONE = new RunNotes(null, null);

  /** True if an instructor shows the run as an example. */
  public boolean isReference() {
    return reference != null;
  }
}
