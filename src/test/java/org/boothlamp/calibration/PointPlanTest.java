package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.PointPlan.Step;
import org.junit.jupiter.api.Test;

/** Up and down again. */
class PointPlanTest {

  private final PointPlan plan = PointPlan.through(PointPlan.evenly(3, 100));

  private static CalibrationPoint taken(Step step) {
    return Runs.point(step.level(), step.direction(), 1, step.level());
  }

  @Test
  void shouldGoUpAndDownAgain() {
    assertEquals(
        List.of(
            new Step(0, Direction.RISING),
            new Step(50, Direction.RISING),
            new Step(100, Direction.RISING),
            new Step(50, Direction.FALLING),
            new Step(0, Direction.FALLING)),
        plan.steps());
  }

  @Test
  void shouldPassTheRuleThatEveryLevelIsApproachedBothWays() {
    List<CalibrationPoint> points = new ArrayList<>();
    for (Step step : PointPlan.through(PointPlan.evenly(5, 400)).steps()) {
      points.add(
          Runs.point(
              step.level(), step.direction(), Runs.CLAMP.toCount(step.level()), step.level()));
    }
    List<Refusal> refusals =
        PointChecks.check(Runs.soundClamp().withPoints(points), CalibrationRules.STANDARD);
    assertEquals(List.of(), refusals);
  }

  @Test
  void shouldGoOnWhereItWasLeftAndComeBackToAPointThatWasThrownAway() {
    List<CalibrationPoint> points = new ArrayList<>();
    plan.steps().forEach(step -> points.add(taken(step)));
    assertNull(plan.next(points));
    points.set(1, points.get(1).discarded("lead slipped"));
    assertEquals(plan.steps().get(1), plan.next(points));
    assertEquals(2, plan.place(plan.next(points)));
    assertEquals(plan.steps().get(1), plan.next(points.subList(0, 1)));
  }
}
