package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransferTest {

  private static TransferFigures figures(
      double perSecond, double shortSeconds, double share, double irregularity) {
    double cycle = 1 / perSecond;
    return new TransferFigures(
        perSecond, cycle, 0.3 * cycle, shortSeconds, share, irregularity, 200, 260);
  }

  /** 20 to over 200 shorts a second (welding textbook); 50 to 200 (steel producer's guidance). */
  @ParameterizedTest
  @CsvSource({
    "20, 0.005, 0.10, 0.8, STEADY",
    "50, 0.005, 0.25, 0.8, STEADY",
    "200, 0.0015, 0.30, 0.8, STEADY",
    "50, 0.005, 0.25, 1.9, UNEVEN",
    "12, 0.003, 0.04, 1.0, TOO_HOT",
    "12, 0.030, 0.36, 1.0, TOO_COLD",
    "60, 0.009, 0.54, 1.0, TOO_COLD",
    "1, 0.003, 0.01, 1.0, NO_SHORTS"
  })
  void shouldPutTheTransferIntoAWord(
      double perSecond, double seconds, double share, double irregularity, TransferState state) {
    assertEquals(state, figures(perSecond, seconds, share, irregularity).state(140, 0.9));
  }

  /** Mild steel, 98 % argon and 2 % oxygen, electrode positive (wire maker's handbook). */
  @ParameterizedTest
  @CsvSource({"0.030, 150", "0.035, 165", "0.045, 220", "0.052, 240", "0.062, 275"})
  void shouldCallItSprayFromTheLowestCurrentOfTheWire(double inch, double amps) {
    double wireMm = 25.4 * inch;
    assertEquals(amps, SprayCurrent.leastAmps(wireMm), 1e-9);
    TransferFigures none = TransferFigures.ofCount(3, 10);
    assertEquals(TransferState.SPRAY, none.state(amps + 1, wireMm));
    assertEquals(TransferState.NO_SHORTS, none.state(amps - 1, wireMm));
  }

  @Test
  void shouldNotCallItSprayWithoutKnowingTheWire() {
    TransferFigures none = TransferFigures.ofCount(3, 10);
    assertEquals(TransferState.NO_SHORTS, none.state(250, Double.NaN));
    assertTrue(Double.isNaN(SprayCurrent.leastAmps(3.2)));
  }
}
