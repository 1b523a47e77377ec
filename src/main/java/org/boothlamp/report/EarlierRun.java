package org.boothlamp.report;

/**
 * What a comparison needs of a run of an earlier shift. Immutable.
 *
 * @param trainee trainee code; empty if nobody had signed in
 * @param procedureId procedure, or empty if none was loaded
 * @param revision its revision, or empty
 * @param pass pass name, or empty
 * @param startWallMillis time of day at the start, ms since the epoch
 * @param insideSeconds time judged green or amber
 * @param judgedSeconds time that was judged at all
 */
public record EarlierRun(
    String trainee,
    String procedureId,
    String revision,
    String pass,
    long startWallMillis,
    double insideSeconds,
    double judgedSeconds) {

  /** The same of a run that was read whole. */
  public static EarlierRun of(RunRecord run) {
    return new EarlierRun(
        run.trainee(),
        run.procedureId(),
        run.procedureRevision(),
        run.pass(),
        run.startWallMillis(),
        run.insideSeconds(),
        run.judgedSeconds());
  }

  boolean isJudged() {
    return judgedSeconds > 0;
  }

  /** True if both were welded to the same pass of the same revision. */
  boolean isLike(EarlierRun other) {
    return pass.equals(other.pass)
        && revision.equals(other.revision)
        && procedureId.equals(other.procedureId);
  }
}
