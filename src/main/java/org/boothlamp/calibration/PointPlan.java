package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The levels of a calibration in the order they are set: up from the lowest to the highest, and
 * down again. The highest is approached from below only: going beyond it is not asked of anybody.
 * Immutable.
 *
 * @param steps in order
 */
public record PointPlan(List<Step> steps) {

  /** A level to set and the side to come from. */
  public record Step(double level, Direction direction) {}

  public PointPlan {
    steps = List.copyOf(steps);
  }

  /** Up through these levels and down again; sorted and each once. */
  public static PointPlan through(double... levels) {
    double[] rising = Arrays.stream(levels).sorted().distinct().toArray();
    List<Step> steps = new ArrayList<>();
    for (double level : rising) {
      steps.add(new Step(level, Direction.RISING));
    }
    for (int i = rising.length - 2; i >= 0; i--) {
      steps.add(new Step(rising[i], Direction.FALLING));
    }
    return new PointPlan(steps);
  }

  /** Levels in equal steps from 0 to the highest. */
  public static double[] evenly(int levels, double highest) {
    double[] even = new double[levels];
    for (int i = 0; i < levels; i++) {
      even[i] = highest * i / (levels - 1);
    }
    return even;
  }

  /** The first step for which no used point was taken yet, or null. */
  public Step next(List<CalibrationPoint> points) {
    return steps.stream().filter(step -> !isTaken(step, points)).findFirst().orElse(null);
  }

  private static boolean isTaken(Step step, List<CalibrationPoint> points) {
    return points.stream()
        .anyMatch(
            point ->
                !point.isDiscarded()
                    && point.level() == step.level()
                    && point.direction() == step.direction());
  }

  /** Place of a step, from 1. */
  public int place(Step step) {
    return steps.indexOf(step) + 1;
  }
}
