package org.boothlamp.hardwarenotes;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.util.FastMath;

/** What sensors.md says of divider, counts, uncertainty, isolation and clamp, computed again. */
final class SensorArithmetic {

  /** Where the uncertainties are stated. */
  private static final double AT_VOLTS = 20;

  private static final double AT_AMPS = 100;

  /** A rectangular distribution of half width a has u = a/√3 (GUM, JCGM 100:2008, 4.3.7). */
  private static final double RECTANGLE = 1 / Math.sqrt(3);

  /** A resolution has u = step/√12 (GUM, JCGM 100:2008, F.2.2.1). */
  private static final double RESOLUTION = 1 / Math.sqrt(12);

  private final Notes notes;
  private final Map<String, Double> results = new LinkedHashMap<>();

  private SensorArithmetic(Notes notes) {
    this.notes = notes;
  }

  static Map<String, Double> results(Notes notes) {
    SensorArithmetic arithmetic = new SensorArithmetic(notes);
    arithmetic.divider();
    arithmetic.dividerAtFault();
    arithmetic.voltsPerCount();
    arithmetic.voltsUncertainty();
    arithmetic.isolation();
    arithmetic.clamp();
    return arithmetic.results;
  }

  private double part(String name) {
    return notes.part(name);
  }

  private double top() {
    return part("R1") + part("R2") + part("R3") + part("R4");
  }

  private double total() {
    return top() + part("R5");
  }

  private double ratio() {
    return total() / part("R5");
  }

  private void divider() {
    double amps = part("V_OC") / total();
    results.put("r-total", total());
    results.put("ratio", ratio());
    results.put("v-r5", part("V_OC") / ratio());
    results.put("v-linear", part("V_LIN") * ratio());
    results.put("i-tap", amps);
    results.put("p-total", part("V_OC") * amps);
    results.put("p-r1", amps * amps * part("R1"));
    results.put("p-r5", amps * amps * part("R5"));
    results.put("p-load", amps * amps * part("R1") / part("P_R"));
    results.put("v-r1", amps * part("R1"));
  }

  private void dividerAtFault() {
    double amps = part("V_OC") / (total() - part("R1"));
    results.put("p-fault", amps * amps * part("R2"));
    results.put("v-fault", amps * part("R2"));
    results.put("v-r5-fault", amps * part("R5"));
    results.put("i-leg", part("V_OC") / (part("R1") + part("R2")));
    results.put("v-burst", 3_000.0 / 4);
    results.put("v-start", 15_000.0 / 4);
  }

  /** Counts of the converter, more of them by averaging. */
  private double counts() {
    return FastMath.pow(2, part("BITS")) * Math.sqrt(part("N_AV"));
  }

  private void voltsPerCount() {
    double gain = part("G_ISO") * part("G1") / ratio();
    results.put("v-count", part("V_REF") / counts() / gain);
    results.put("v-full", part("V_REF") / 2 / gain);
    results.put("v-count-12", part("V_REF") / (1 << 12) / gain);
    results.put("v-count-10", part("V_REF") / (1 << 10) / gain);
  }

  /** Four equal resistors in a row share their errors' weight, R5 has all of its own. */
  private double ratioUncertainty(double halfWidth) {
    return (1 - 1 / ratio()) * halfWidth * RECTANGLE * Math.sqrt(1.0 / 4 + 1);
  }

  private void voltsUncertainty() {
    results.put("v-worst", (1 - 1 / ratio()) * (notes.tolerance("R1") + notes.tolerance("R5")));
    double ofTolerance = ratioUncertainty(notes.tolerance("R1"));
    double ofTemperature = ratioUncertainty(part("TK") * part("DT"));
    double gain =
        rootOfSquares(
            ofTolerance,
            ofTemperature,
            notes.tolerance("G_ISO") * RECTANGLE,
            notes.tolerance("G1") * RECTANGLE,
            notes.tolerance("V_REF") * RECTANGLE);
    double offset =
        ratio()
            * RECTANGLE
            * rootOfSquares(part("V_OS1"), part("I_LK") * part("R5"), part("V_OS2") / part("G1"));
    double resolution = results.get("v-count") * RESOLUTION;
    results.put("u-ratio", ofTolerance);
    results.put("u-temperature", ofTemperature);
    results.put("u-gain", gain);
    results.put("u-offset", offset);
    results.put("u-resolution", resolution);
    results.put("u-volts", 2 * rootOfSquares(gain * AT_VOLTS, offset, resolution));
  }

  /** Independent contributions (GUM, JCGM 100:2008, 5.1.2). */
  private static double rootOfSquares(double... contributions) {
    double sum = 0;
    for (double contribution : contributions) {
      sum += contribution * contribution;
    }
    return Math.sqrt(sum);
  }

  private void isolation() {
    double needed = part("V_OC") + part("V_IMP2");
    double peak = part("V_ISO") * Math.sqrt(2);
    results.put("iso-working", part("V_OC") / Math.sqrt(2));
    results.put("iso-basic", part("V_OC") + part("V_IMP"));
    results.put("iso-needed", needed);
    results.put("iso-peak", peak);
    results.put("iso-margin", peak / needed);
    results.put("creepage", 2 * part("D_CR"));
  }

  private void clamp() {
    double gain = part("G2") * part("S_CL");
    double step = part("V_REF") / counts() / gain;
    results.put("a-count", step);
    results.put("a-full", part("V_REF") / 2 / gain);
    results.put("a-count-12", part("V_REF") / (1 << 12) / gain);
    results.put("a-count-10", part("V_REF") / (1 << 10) / gain);
    double pulled = part("V_REF") / 2 * part("R_CL") / (part("R10") + part("R_CL"));
    results.put("a-pull", pulled / part("S_CL"));
    results.put("a-open", part("V_REF") / 2);
    double limits =
        rootOfSquares(
            notes.tolerance("S_CL") * AT_AMPS,
            part("I_OS"),
            part("E_POS") * AT_AMPS,
            notes.tolerance("G2") * AT_AMPS,
            notes.tolerance("V_REF") * AT_AMPS);
    results.put("u-amps", 2 * rootOfSquares(limits * RECTANGLE, step * RESOLUTION));
  }
}
