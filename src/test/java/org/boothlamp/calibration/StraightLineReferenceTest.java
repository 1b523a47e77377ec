package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;
import org.boothlamp.signal.ChannelScale;
import org.junit.jupiter.api.Test;

/** The fit against data sets whose answers are certified or published. */
class StraightLineReferenceTest {

  /** NIST StRD Norris, "Calibration of Ozone Monitors": y,x pairs in certified order. */
  private static final String NORRIS =
      "0.1,0.2;338.8,337.4;118.1,118.2;888.0,884.6;9.2,10.1;228.1,226.5;668.5,666.3;998.5,996.3;"
          + "449.1,448.6;778.9,777.0;559.2,558.2;0.3,0.4;0.1,0.6;778.1,775.5;668.8,666.9;"
          + "339.3,338.0;448.9,447.5;10.8,11.6;557.7,556.0;228.3,228.1;998.0,995.8;888.8,887.6;"
          + "119.6,120.2;0.3,0.3;0.6,0.3;557.6,556.8;339.3,339.1;888.0,887.2;998.5,999.0;"
          + "778.9,779.0;10.2,11.1;117.6,118.3;228.9,229.2;668.4,669.1;449.2,448.9;0.2,0.5";

  /** JCGM 100:2008 H.3, "Calibration of a thermometer": reading, correction, both in degrees C. */
  private static final String THERMOMETER =
      "21.521,-0.171;22.012,-0.169;22.512,-0.166;23.003,-0.159;23.507,-0.164;23.999,-0.165;"
          + "24.513,-0.156;25.002,-0.157;25.503,-0.159;26.010,-0.161;26.511,-0.160";

  private static double[] column(String pairs, int index) {
    return Arrays.stream(pairs.split(";"))
        .mapToDouble(pair -> Double.parseDouble(pair.split(",")[index]))
        .toArray();
  }

  /** Relative error; certified values have 15 digits. */
  private static void assertDigits(double certified, double actual, int digits) {
    double off = Math.abs(actual - certified) / Math.abs(certified);
    assertTrue(
        off < Math.pow(10, -digits),
        () -> "certified " + certified + ", is " + actual + ", relative error " + off);
  }

  /** NIST StRD Norris.dat, read as reproduced in public code. */
  @Test
  void shouldGiveTheCertifiedDigitsOfNorris() {
    CalibrationResult result = Runs.fit(column(NORRIS, 1), column(NORRIS, 0));
    StraightLine line = result.line();
    // what is left of data near 1000 in double precision
    assertDigits(-0.262323073774029, line.offset(), 12);
    assertDigits(0.232818234301152, line.offsetStandardUncertainty(), 13);
    assertDigits(1.00211681802045, line.gain(), 14);
    assertDigits(0.429796848199937e-3, line.gainStandardUncertainty(), 13);
    assertDigits(0.884796396144373, line.residualStandardDeviation(), 13);
    assertDigits(0.999993745883712, result.rSquared(), 14);
    assertEquals(34, line.degreesOfFreedom());
  }

  /**
   * Covariance of intercept and slope: not certified by NIST, from the GSL fit test (secondary).
   */
  @Test
  void shouldGiveTheCovarianceOfNorris() {
    StraightLine line = Runs.fit(column(NORRIS, 1), column(NORRIS, 0)).line();
    double covariance =
        line.correlation() * line.offsetStandardUncertainty() * line.gainStandardUncertainty();
    assertDigits(-7.74327536339570e-05, covariance, 10);
    assertDigits(-7.743275363156437e-05, covariance, 13);
  }

  /**
   * NIST StRD NoInt1, slope and its standard deviation as in two public copies; residual standard
   * deviation from memory, recomputed exactly.
   */
  @Test
  void shouldGiveTheCertifiedDigitsOfNoInt1() {
    double[][] rows =
        IntStream.rangeClosed(60, 70).mapToObj(x -> new double[] {x}).toArray(double[][]::new);
    double[] values = IntStream.rangeClosed(130, 140).asDoubleStream().toArray();
    LeastSquares fit = LeastSquares.ordinary(rows, values);
    assertDigits(2.07438016528926, fit.coefficient(0), 14);
    assertDigits(0.165289256198347e-1, Math.sqrt(fit.covariance(0, 0)), 13);
    assertDigits(3.56753034006338, Math.sqrt(fit.variance()), 13);
    assertEquals(10, fit.degreesOfFreedom());
  }

  private static void assertPublished(String published, double actual) {
    int decimals = published.length() - published.indexOf('.') - 1;
    assertEquals(published, String.format(Locale.ROOT, "%." + decimals + "f", actual));
  }

  /**
   * JCGM 100:2008 H.3.3 and H.3.4 as worked through by a national metrology institute (secondary);
   * s = 0.0035 from memory.
   */
  @Test
  void shouldGiveEveryPublishedDigitOfTheThermometer() {
    StraightLine line = Runs.fit(column(THERMOMETER, 0), column(THERMOMETER, 1)).line();
    assertPublished("-0.1712", line.valueAt(20));
    assertPublished("0.0029", line.standardUncertaintyAt(20));
    assertPublished("0.00218", line.gain());
    assertPublished("0.00067", line.gainStandardUncertainty());
    assertPublished("-0.930", line.correlationAt(20));
    assertPublished("0.0035", line.residualStandardDeviation());
    assertPublished("-0.1494", line.valueAt(30));
    assertPublished("0.0041", line.standardUncertaintyAt(30));
    assertEquals(9, line.degreesOfFreedom());
  }

  /** The same, exactly recomputed: the covariance term is in, or it would be 0.00727. */
  @Test
  void shouldCarryTheThermometerUnrounded() {
    StraightLine line = Runs.fit(column(THERMOMETER, 0), column(THERMOMETER, 1)).line();
    assertDigits(-0.171203790131350, line.valueAt(20), 11);
    assertDigits(0.00287759783515995, line.standardUncertaintyAt(20), 11);
    assertDigits(0.00218269773988728, line.gain(), 11);
    assertDigits(0.000667938773227832, line.gainStandardUncertainty(), 11);
    assertDigits(-0.930429603093446, line.correlationAt(20), 11);
    assertDigits(0.00349756396350528, line.residualStandardDeviation(), 11);
    assertDigits(-0.149376812732477, line.valueAt(30), 11);
    assertDigits(0.00413859575285495, line.standardUncertaintyAt(30), 11);
    assertEquals(-0.99784, line.correlation(), 5e-6);
    assertEquals(-0.214857745, line.offset(), 5e-10);
  }

  /** JCGM 100:2008 table H.6, recomputed: fitted corrections less observed ones. */
  @Test
  void shouldGiveTheResidualsOfTheThermometer() {
    double[] published = {
      -0.0031, -0.0022, -0.0003, 0.0056, -0.0005, -0.0025, 0.0054, 0.0033, 0.0002, -0.0029, -0.0030
    };
    CalibrationResult result = Runs.fit(column(THERMOMETER, 0), column(THERMOMETER, 1));
    for (int i = 0; i < published.length; i++) {
      assertEquals(published[i], result.residuals().get(i).residual(), 5.1e-5);
    }
    assertEquals(0.0056, result.largestResidual(), 5e-5);
  }

  /** Against the normal equations in matrix form, computed with NumPy. */
  @Test
  void shouldWeighPointsByTheirUncertainty() {
    double[] readings = {0, 1, 2, 3, 4};
    double[] references = {0.1, 1.2, 1.9, 3.2, 3.8};
    double[] uncertainties = {0.1, 0.2, 0.1, 0.4, 0.2};
    CalibrationResult result =
        Runs.fit(readings, references, uncertainties, Weighting.BY_UNCERTAINTY);
    StraightLine line = result.line();
    assertDigits(0.11001451378809848, line.offset(), 9);
    assertDigits(0.9216255442670536, line.gain(), 9);
    assertDigits(0.06736774516748499, line.offsetStandardUncertainty(), 9);
    assertDigits(0.03632740565677332, line.gainStandardUncertainty(), 9);
    assertDigits(-0.7233711847707109, line.correlation(), 9);
    assertDigits(0.10401000940295116, line.residualStandardDeviation(), 9);
    assertDigits(2.8635642126552705, result.noisiestFactor(), 9);
  }

  @Test
  void shouldWeighAllAlikeWhenAPointClaimsToBeExact() {
    double[] readings = {0, 1, 2, 3, 4};
    double[] references = {0.1, 1.2, 1.9, 3.2, 3.8};
    CalibrationRun run = exactRun(readings, references);
    assertEquals(
        LineFit.fit(PointTable.of(run, Weighting.ORDINARY)).line(),
        LineFit.fit(PointTable.of(run, Weighting.BY_UNCERTAINTY)).line());
  }

  /** Steps so fine that their square is 0. */
  private static CalibrationRun exactRun(double[] readings, double[] references) {
    double step = Math.scalb(1.0, -600);
    var points =
        IntStream.range(0, readings.length)
            .mapToObj(
                i ->
                    new CalibrationPoint(
                        i, Direction.RISING, readings[i] / step, 0, 1, 0, references[i], null))
            .toList();
    return new CalibrationRun(
        Channel.VOLTAGE,
        new ChannelScale(step, 0),
        5,
        Runs.TODAY,
        "T7",
        Runs.meter(0, 0, 0),
        points);
  }
}
