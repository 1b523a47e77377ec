package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {

  @ParameterizedTest
  @CsvSource({
    "0, 0, 0",
    "0, 1, 0.0",
    "0.05, 1, 0.1",
    "-0.04, 1, 0.0",
    "-12.345, 2, -12.35",
    "7.005, 3, 7.005",
    "0.007, 3, 0.007",
    "99.95, 1, 100.0",
    "123456789.5, 0, 123456790",
    "2e15, 1, 2.0E15",
    "NaN, 1, ?",
    "Infinity, 1, Infinity",
  })
  void shouldWriteAFixedNumberOfDecimals(double value, int decimals, String written) {
    assertEquals(written, Numbers.fixed(value, decimals));
  }

  @ParameterizedTest
  @CsvSource({"95, 95", "22.5, 22.5", "0.125, 0.125", "100, 100", "0, 0"})
  void shouldWriteALimitAsShortAsItWasGiven(double limit, String written) {
    assertEquals(written, Numbers.plain(limit));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0.0 s",
    "3.44, 3.4 s",
    "59.94, 59.9 s",
    "59.96, 1:00 min",
    "521, 8:41 min",
    "3599.4, 59:59 min",
    "3599.5, 1:00:00 h",
    "3723, 1:02:03 h",
    "360000, 100:00:00 h",
    "NaN, ? s",
  })
  void shouldWriteALengthInTheFormThatReadsBest(double seconds, String written) {
    assertEquals(written, Durations.words(seconds).replace(Numbers.GLUE, ' '));
  }

  @Test
  void shouldSayThatNothingWasJudged() {
    assertEquals("not judged", Numbers.share(Double.NaN));
    assertEquals("84.8" + Numbers.GLUE + "%", Numbers.share(47.5 / 56));
    assertEquals("100.0" + Numbers.GLUE + "%", Numbers.share(1));
  }

  @Test
  void shouldCountOneThingInTheSingular() {
    assertEquals("1" + Numbers.GLUE + "run", Numbers.counted(1, "run", "runs"));
    assertEquals("0" + Numbers.GLUE + "runs", Numbers.counted(0, "run", "runs"));
  }
}
