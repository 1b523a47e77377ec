package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.junit.jupiter.api.Test;

/** 36,000 runs: 180 days of 200 runs by 8 trainees, every second run with excursions. */
class SchoolYearTest {

  private static final int DAYS = 180;
  private static final int RUNS_A_DAY = 200;

  /** Many times what it takes: only growth with the square of the runs shall be caught. */
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  @Test
  void shouldTellAYearInTime() {
    ShiftRecords year = year();
    ShiftSpan span =
        ShiftSpan.days(LocalDate.of(2025, 9, 1), LocalDate.of(2026, 7, 31), EveningShift.ZONE);
    String text =
        assertTimeout(
            PATIENCE,
            () ->
                TextReport.render(
                    ShiftReport.of(year, span, "B-07", "School year"), 80, Colour.PLAIN));
    // 36,000 runs of 20 s are 200 h; every second has 3 of 19 judged seconds outside:
    // 1 - 1.5 / 19 = 92.1 %
    assertEquals(
        "8 trainees, 36000 runs, 200:00:00 h of arc, 190:00:00 h judged, 92.1 % of it in the"
            + " window",
        text.lines().skip(2).limit(2).reduce((a, b) -> a + " " + b).orElseThrow());
    assertEquals(
        DAYS * RUNS_A_DAY / 2,
        text.lines().filter(line -> line.contains("volts high 2x 3.0 s")).count());
  }

  static ShiftRecords year() {
    List<RunRecord> runs = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      LocalDateTime morning = LocalDate.of(2025, 9, 1).plusDays(day).atTime(7, 0);
      for (int i = 0; i < RUNS_A_DAY; i++) {
        RunBuilder run =
            run()
                .id(runs.size() + 1)
                .at(morning.plusSeconds(120L * i).atZone(EveningShift.ZONE))
                .trainee("T-0" + (1 + i * 8 / RUNS_A_DAY))
                .length(20)
                .levels(19, 0, 0, 1);
        runs.add(i % 2 == 0 ? run.build() : withExcursions(run).build());
      }
    }
    return new ShiftRecords(runs, List.of(), List.of());
  }

  private static RunBuilder withExcursions(RunBuilder run) {
    return run.levels(14, 2, 3, 1)
        .excursion(Quantity.VOLTS, Side.HIGH, 4, 1, 27.2)
        .excursion(Quantity.VOLTS, Side.HIGH, 9, 2, 28.9);
  }
}
