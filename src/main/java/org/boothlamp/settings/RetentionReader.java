package org.boothlamp.settings;

import org.boothlamp.boothlog.RetentionRule;

/** Reads the section [retention]. Confined to one thread. */
final class RetentionReader {

  private static final Range DAYS = new Range(0, 36_500, "days");

  private final Section section;

  RetentionReader(Section section) {
    this.section = section;
  }

  RetentionRule read() {
    RetentionRule rule =
        new RetentionRule(
            days("traces_days"), days("runs_days"), days("events_days"), days("sign_ins_days"));
    if (rule.runsDays() > 0 && rule.tracesDays() > rule.runsDays()) {
      section.refuse(
          "traces_days",
          "must not be longer than runs_days, "
              + rule.runsDays()
              + " days, for a trace goes with its run, but is "
              + rule.tracesDays()
              + " days",
          "write at most traces_days = " + rule.runsDays() + ", or a longer runs_days");
    }
    return rule;
  }

  private int days(String key) {
    return (int) section.whole(key, DAYS, 0);
  }
}
