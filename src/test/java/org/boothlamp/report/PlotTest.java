package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlotTest {

  @ParameterizedTest
  @CsvSource({"4, 1", "7, 2", "24, 5", "26, 10", "0.003, 0.001", "412, 100"})
  void shouldStepInOnesTwosAndFives(double range, double step) {
    assertEquals(step, Plot.step(range), 1e-12);
  }

  @Test
  void shouldKeepWhatLiesOutsideAtTheFrame() {
    Markup page = new Markup();
    Plot plot = new Plot(page, "p", 340, 0, 10, 1);
    plot.mark(Plot.Mark.CIRCLE, 5, 99);
    plot.close();
    assertTrue(page.toString().contains("cx=\"188.0\" cy=\"14.0\""), page.toString());
  }
}
