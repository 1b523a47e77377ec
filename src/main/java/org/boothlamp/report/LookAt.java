package org.boothlamp.report;

/**
 * The one thing of a trainee's shift that most deserves a look, as far as figures can say. Later
 * kinds are only looked for where the earlier do not hold. A pure function.
 */
public enum LookAt {
  /** The current ran the wrong way in a run: nothing else counts before that is right. */
  POLARITY,
  /** More time under a fault than was judged. */
  FAULT,
  /** Only touches. */
  NO_RUN,
  /** Runs, and none of them judged. */
  NOT_JUDGED,
  /** An average was outside its window. */
  OUTSIDE,
  /** Outside for a tenth of the time or more, and never long enough for an excursion. */
  BRIEFLY_OUTSIDE,
  /** The electrode stuck. */
  STUCK,
  /** The arc went out, once a run or more often. */
  ARC_OUTS,
  /** Inside, and most of it near a limit. */
  NEAR,
  /** Inside. */
  INSIDE;

  private static final double MOST_OF_IT = 0.5;
  private static final double MUCH_OF_IT = 0.1;

  static LookAt of(TraineeSummary trainee, int wrongPolarityRuns) {
    Figures figures = trainee.total();
    if (wrongPolarityRuns > 0) {
      return POLARITY;
    }
    if (figures.faultSeconds() > figures.judgedSeconds()) {
      return FAULT;
    }
    if (figures.runs() == 0) {
      return NO_RUN;
    }
    if (!(figures.judgedSeconds() > 0)) {
      return NOT_JUDGED;
    }
    return ofJudged(trainee, figures);
  }

  private static LookAt ofJudged(TraineeSummary trainee, Figures figures) {
    if (!figures.excursions().isEmpty()) {
      return OUTSIDE;
    }
    if (figures.redSeconds() >= MUCH_OF_IT * figures.judgedSeconds()) {
      return BRIEFLY_OUTSIDE;
    }
    if (trainee.stuck() > 0) {
      return STUCK;
    }
    if (figures.arcOuts() >= figures.runs()) {
      return ARC_OUTS;
    }
    return figures.amberSeconds() > MOST_OF_IT * figures.judgedSeconds() ? NEAR : INSIDE;
  }

  /** The word for files. */
  public String word() {
    return switch (this) {
      case POLARITY -> "polarity";
      case FAULT -> "fault";
      case NO_RUN -> "no_run";
      case NOT_JUDGED -> "not_judged";
      case OUTSIDE -> "outside";
      case BRIEFLY_OUTSIDE -> "briefly_outside";
      case STUCK -> "stuck";
      case ARC_OUTS -> "arc_outs";
      case NEAR -> "near";
      case INSIDE -> "inside";
    };
  }
}
