package org.boothlamp.hardwarenotes;

import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** What lamp-driver.md says, computed again. */
final class LampArithmetic {

  /** Parts of the pump whose tolerance counts. */
  private static final List<String> TOLERATED =
      List.of("C21", "C22", "R24", "V_SW", "V_PIN", "V_D");

  private final Notes notes;

  private LampArithmetic(Notes notes) {
    this.notes = notes;
  }

  static Map<String, Double> results(Notes notes) {
    Map<String, Double> results = new LinkedHashMap<>();
    LampArithmetic lamp = new LampArithmetic(notes);
    lamp.driver(results);
    lamp.pump(results);
    return results;
  }

  private double part(String name) {
    return notes.part(name);
  }

  private void driver(Map<String, Double> results) {
    double pull = part("R22") / (part("R22") + part("R_UP"));
    results.put("v-reset", part("V_PIN") * pull);
    results.put("v-reset-5", part("V_PIN5") * pull);
    results.put("v-lit", part("V_PIN") * part("R22") / (part("R21") + part("R22")));
    results.put("i-pin", part("V_PIN") / (part("R21") + part("R22")));
    results.put("v-glimmer", part("I_LEAK") * part("R23"));
    results.put("p-light", part("V_LAMP") * part("I_LIGHT"));
    results.put("i-three", 3 * part("I_LIGHT"));
    results.put("p-r23", part("V_LAMP") * part("V_LAMP") / part("R23"));
  }

  private void pump(Map<String, Double> results) {
    Pump nominal = pump(this::part);
    List<Pump> corners = corners();
    results.put("pump-share", nominal.share());
    results.put("pump-tau", nominal.tau());
    results.put("pump-high", nominal.high());
    results.put("pump-low", nominal.low());
    results.put("pump-low-worst", over(corners, Pump::low).getMin());
    results.put("pump-edges", (double) nominal.edges());
    results.put("pump-edges-worst", over(corners, Pump::edges).getMax());
    results.put("t-dark", nominal.darkAfter());
    results.put("t-dark-least", over(corners, Pump::darkAfter).getMin());
    results.put("t-dark-most", over(corners, Pump::darkAfter).getMax());
  }

  /** The pump with every part at one of the ends of its tolerance. */
  private List<Pump> corners() {
    return IntStream.range(0, 1 << TOLERATED.size())
        .mapToObj(corner -> pump(name -> atEnd(name, end(corner, TOLERATED.indexOf(name)))))
        .toList();
  }

  private static int end(int corner, int bit) {
    return (corner >> bit & 1) == 0 ? -1 : 1;
  }

  private static DoubleSummaryStatistics over(List<Pump> pumps, ToDoubleFunction<Pump> figure) {
    return pumps.stream().mapToDouble(figure).summaryStatistics();
  }

  private Pump pump(ToDoubleFunction<String> value) {
    return new Pump(
        value.applyAsDouble("C21"),
        value.applyAsDouble("C22"),
        value.applyAsDouble("R24"),
        value.applyAsDouble("V_SW"),
        value.applyAsDouble("V_PIN") - 2 * value.applyAsDouble("V_D"),
        part("T_HB"));
  }

  private double atEnd(String name, int side) {
    return part(name) * (1 + side * notes.tolerance(name));
  }

  /** A diode pump into a drained reservoir: SI units. */
  private record Pump(
      double pumpFarads,
      double reservoirFarads,
      double drainOhms,
      double thresholdVolts,
      double driveVolts,
      double periodSeconds) {

    private static final int MOST_EDGES = 100;

    double share() {
      return pumpFarads / (pumpFarads + reservoirFarads);
    }

    double tau() {
      return drainOhms * reservoirFarads;
    }

    private double decay() {
      return Math.exp(-periodSeconds / tau());
    }

    private double afterEdge(double volts) {
      return volts + share() * (driveVolts - volts);
    }

    double high() {
      return share() * driveVolts / (1 - (1 - share()) * decay());
    }

    double low() {
      return high() * decay();
    }

    double darkAfter() {
      return tau() * Math.log(high() / thresholdVolts);
    }

    /** Rising edges, from empty, until the reservoir is above the threshold; simulated. */
    int edges() {
      double volts = 0;
      for (int edge = 1; edge <= MOST_EDGES; edge++) {
        volts = afterEdge(volts);
        if (volts > thresholdVolts) {
          return edge;
        }
        volts *= decay();
      }
      throw new IllegalStateException("the pump never reaches its threshold");
    }
  }
}
