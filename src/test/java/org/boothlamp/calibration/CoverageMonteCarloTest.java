package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Calibrations of a sensor that is known to the last digit, each followed by one reading in the
 * booth: how often the stated interval holds the true current.
 */
class CoverageMonteCarloTest {

  private static final int CALIBRATIONS = 2_000;
  private static final double FULL_SCALE = 400;

  /**
   * A sensor and its circumstances.
   *
   * @param noiseAmps standard deviation of a sensor's mean
   * @param loopAmps width of the hysteresis loop
   * @param meterPercent limit of the meter's error, in % of reading
   * @param meterCounts and in steps of 0.1 A
   * @param temperatureAmps how far temperature may move the zero, either way
   */
  private record Bench(
      double noiseAmps,
      double loopAmps,
      double meterPercent,
      double meterCounts,
      double temperatureAmps) {}

  /** One sensor with its own gain, zero, meter and luck. */
  private static final class Trial {
    private final Bench bench;
    private final SplittableRandom random;
    private final double gain;
    private final double zeroAmps;
    private final double meterLuck;

    Trial(Bench bench, SplittableRandom random) {
      this.bench = bench;
      this.random = random;
      this.gain = random.nextDouble(0.9, 1.1);
      this.zeroAmps = random.nextDouble(-4, 4);
      this.meterLuck = random.nextDouble(-1, 1);
    }

    /**
     * @param loop place in the loop, -0.5 rising to 0.5 falling
     */
    private double counts(double amps, double loop) {
      double shown = amps / gain + zeroAmps + loop * bench.loopAmps();
      return Runs.CLAMP.toCount(shown + bench.noiseAmps() * random.nextGaussian());
    }

    private double meterReading(double amps) {
      ReferenceMeter meter = meter();
      double shown = amps + meterLuck * meter.errorLimit(amps);
      return Math.rint(shown / meter.resolution()) * meter.resolution();
    }

    private ReferenceMeter meter() {
      return Runs.meter(bench.meterPercent(), bench.meterCounts(), 0.1);
    }

    CalibrationRun run() {
      List<CalibrationPoint> points = new ArrayList<>();
      for (int level = 0; level <= 400; level += 80) {
        points.add(point(level, Direction.RISING, -0.5));
      }
      for (int level = 400; level >= 0; level -= 80) {
        points.add(point(level, Direction.FALLING, 0.5));
      }
      return new CalibrationRun(
          Channel.CURRENT, Runs.CLAMP, FULL_SCALE, Runs.TODAY, "T7", meter(), points);
    }

    private CalibrationPoint point(double level, Direction direction, double loop) {
      double amps = level + random.nextDouble(-1, 1);
      return Runs.point(level, direction, counts(amps, loop), meterReading(amps));
    }

    /** True if one later reading is right to within the stated U. */
    boolean holdsTheTruth(TemperatureAllowance temperature) {
      CalibrationRun run = run();
      CalibrationResult result = LineFit.fit(PointTable.of(run, Weighting.ORDINARY));
      double amps = random.nextDouble(0, FULL_SCALE);
      double moved = bench.temperatureAmps() * random.nextDouble(-1, 1);
      double counts = counts(amps, random.nextDouble(-0.5, 0.5));
      double shown = result.calibrate(Runs.CLAMP).toUnits(counts) + moved;
      return Math.abs(shown - amps)
          <= UncertaintyModel.of(run, result, temperature).expandedAt(shown);
    }
  }

  private static double coveragePercent(Bench bench, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    TemperatureAllowance temperature = new TemperatureAllowance(bench.temperatureAmps(), 0);
    int held = 0;
    for (int i = 0; i < CALIBRATIONS; i++) {
      held += new Trial(bench, random).holdsTheTruth(temperature) ? 1 : 0;
    }
    return 100.0 * held / CALIBRATIONS;
  }

  private static void assertCoverage(Bench bench, double least, double most) {
    double percent = coveragePercent(bench, 20_260_302);
    assertTrue(percent >= least && percent <= most, percent + " % held the truth");
  }

  @Test
  void shouldHoldTheTruthAsOftenAsStated() {
    assertCoverage(new Bench(0.6, 0.8, 0.1, 3, 0.3), 93, 97);
  }

  @Test
  void shouldHoldTheTruthAsOftenAsStatedWhenOnlyNoiseIsLeft() {
    assertCoverage(new Bench(0.6, 0, 0, 0, 0), 93, 97);
  }

  @Test
  void shouldHoldTheTruthAsOftenAsStatedWithAWideLoop() {
    assertCoverage(new Bench(0.6, 2, 0.05, 2, 0), 93, 97);
  }

  /** Limits outweigh the scatter here: U covers more than it states, and never less. */
  @Test
  void shouldErrOnTheSafeSideWithACoarseMeter() {
    assertCoverage(new Bench(0.1, 0.1, 0.5, 5, 0.5), 95, 100);
  }
}
