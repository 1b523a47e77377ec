package org.boothlamp.report;

import org.boothlamp.technique.TechniqueReading;

/**
 * What was said of a run after it was welded: by people, and by its own amps and volts. Immutable.
 *
 * @param bead its bead as entered last; null if nobody did
 * @param reference the mark of a reference weld; null if it is none
 * @param technique what its amps and volts said of the technique; null if they were not read
 */
public record RunNotes(EnteredBead bead, ReferenceWeld reference, TechniqueReading technique) {

  /** Of a run of which nothing was said. */
  public static final RunNotes NONE = new RunNotes(null, null, null);

  /** The same with another bead. */
  public RunNotes withBead(EnteredBead other) {
    return new RunNotes(other, reference, technique);
  }

  /** The same with another mark. */
  public RunNotes withReference(ReferenceWeld other) {
    return new RunNotes(bead, other, technique);
  }

  /** The same with another reading. */
  public RunNotes withTechnique(TechniqueReading other) {
    return new RunNotes(bead, reference, other);
  }

  /** True if an instructor shows the run as an example. */
  public boolean isReference() {
    return reference != null;
  }
}
