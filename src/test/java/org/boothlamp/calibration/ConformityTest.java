package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The decision rule about its edges, and classes as the standards word them. */
class ConformityTest {

  /** JCGM 106:2012 8.3.2, guarded acceptance, from memory. */
  @ParameterizedTest
  @CsvSource({
    "7, CONFORMS",
    "-7, CONFORMS",
    "7.001, UNDECIDED",
    "10, UNDECIDED",
    "13, UNDECIDED",
    "13.001, FAILS",
    "-13.001, FAILS"
  })
  void shouldKeepAGuardBandOfUOnEitherSide(double error, Conformity.Decision decision) {
    Conformity conformity = Conformity.at(100, error, 10, 3);
    assertEquals(decision, conformity.decision());
    assertEquals(7, conformity.acceptanceLimit());
  }

  @Test
  void shouldShowThePointThatFaresWorst() {
    Conformity good = Conformity.at(0, 1, 10, 3);
    Conformity near = Conformity.at(100, 8, 10, 3);
    Conformity failed = Conformity.at(200, 4, 1, 2);
    assertEquals(failed, Conformity.worst(List.of(good, failed, near)));
    assertEquals(near, Conformity.worst(List.of(near, good)));
    assertEquals(good, Conformity.worst(List.of(Conformity.at(50, 0, 10, 3), good)));
  }

  /**
   * IEC 60974-1 standard grade, from memory (medium): 10 % of the true value down to 25 % of the
   * range, below it 2.5 % of the maximum.
   */
  @Test
  void shouldTakeTheLargerOfBothShares() {
    AccuracyClass grade = new AccuracyClass("standard grade", 0.025, 0.1);
    assertEquals(40, grade.errorLimit(400, 400), 1e-12);
    assertEquals(10, grade.errorLimit(100, 400), 1e-12);
    assertEquals(10, grade.errorLimit(-20, 400), 1e-12);
    assertEquals(10, AccuracyClass.STANDARD.errorLimit(400, 400), 1e-12);
  }
}
