package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationResult;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Conformity;
import org.boothlamp.calibration.ControlChart;
import org.boothlamp.calibration.ControlDrift;
import org.boothlamp.calibration.ControlRule;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.LackOfFit;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.StraightLine;
import org.boothlamp.calibration.Weighting;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/** What text and certificate say of a calibration in the same words. Free text is made visible. */
final class CalibrationWords {

  static final List<String> CAUTIONS =
      List.of(
          "The lamp is no safety device and no acceptance of a weld.",
          "This is the school's own record of a comparison with a meter, not a certificate of an"
              + " accredited laboratory; its traceability is that of the meter's certificate.",
          "U holds for a mean over about as long as the points took, at the temperature of the"
              + " calibration unless the budget has a line for temperature.");

  private final CalibrationSheet sheet;

  CalibrationWords(CalibrationSheet sheet) {
    this.sheet = sheet;
  }

  /** A label and what it says. */
  record Fact(String label, String words) {}

  String title() {
    return "Calibration "
        + sheet.record().number()
        + " of booth "
        + VisibleText.of(sheet.head().booth());
  }

  String channelTitle() {
    String word = sheet.record().channel().word();
    return word.substring(0, 1).toUpperCase(Locale.ROOT)
        + word.substring(1)
        + " sensor, full scale "
        + amount(sheet.head().fullScale());
  }

  /** One line of where it stands. */
  String headline() {
    CalibrationFinish finish = sheet.record().finish();
    return switch (sheet.status()) {
      case ACCEPTED ->
          "Accepted" + (sheet.isOverdue() ? ", overdue since " : ", next due ") + finish.nextDue();
      case REFUSED -> "Refused";
      case ABANDONED -> "Given up";
      case UNDER_WAY -> "Under way";
      case WITHDRAWN ->
          "Withdrawn from " + sheet.moment(sheet.record().withdrawal().fromWallMillis());
    };
  }

  List<Fact> head() {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Date",
            sheet.head().date()
                + ", begun "
                + TimesOfDay.clock(sheet.local(sheet.head().startedWallMillis()))
                + ", "
                + sheet.zoneName()
                + " time"));
    CalibrationFinish finish = sheet.record().finish();
    facts.add(new Fact("Ended", finish == null ? "not yet" : sheet.moment(finish.wallMillis())));
    facts.add(new Fact("Technician", VisibleText.of(sheet.head().technicianCode())));
    facts.add(new Fact("Nominal scale", scale(sheet.head().nominal())));
    long before = sheet.head().inUseNumber();
    facts.add(
        new Fact(
            "In use before",
            (before == 0 ? "nominal scale" : "calibration " + before)
                + ", "
                + scale(sheet.head().inUse())));
    facts.add(new Fact("Class", accuracyClass()));
    facts.add(
        new Fact(
            "Fit",
            sheet.head().rules().weighting() == Weighting.ORDINARY
                ? "all points count the same"
                : "points count by their own uncertainty"));
    return facts;
  }

  List<Fact> meter() {
    ReferenceMeter meter = sheet.head().meter();
    return List.of(
        new Fact("Meter", VisibleText.of(meter.make())),
        new Fact("Serial number", VisibleText.of(meter.serialNumber())),
        new Fact(
            "Certificate",
            VisibleText.of(meter.certificateNumber()) + " of " + meter.certificateDate()),
        new Fact(
            "Accuracy",
            "±("
                + MeasuredValue.figure(meter.accuracyPercentOfReading())
                + " % of reading + "
                + MeasuredValue.figure(meter.accuracyCounts())
                + " counts), one count "
                + amount(meter.resolution())));
  }

  private String accuracyClass() {
    CalibrationRules rules = sheet.head().rules();
    String words =
        VisibleText.of(rules.accuracyClass().name())
            + ": "
            + percent(rules.accuracyClass().shareOfFullScale())
            + " of full scale";
    double ofReading = rules.accuracyClass().shareOfReading();
    return ofReading == 0
        ? words
        : words + " or " + percent(ofReading) + " of the reading, whichever is more";
  }

  String scale(ChannelScale scale) {
    return MeasuredValue.figure(scale.unitsPerCount())
        + " "
        + sheet.unit()
        + " a count, zero at "
        + MeasuredValue.figure(scale.zeroCount());
  }

  /** The scale in force, with all its digits. */
  String exactScale(ChannelScale scale) {
    return scale.unitsPerCount()
        + " "
        + sheet.unit()
        + " a count, zero at count "
        + scale.zeroCount();
  }

  List<Fact> fit() {
    CalibrationResult result = sheet.result();
    StraightLine line = result.line();
    String unit = sheet.unit();
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Offset", withStandard(line.offset(), line.offsetStandardUncertainty(), " " + unit)));
    facts.add(new Fact("Gain", withStandard(line.gain(), line.gainStandardUncertainty(), "")));
    facts.add(new Fact("Correlation of the two", Numbers.fixed(line.correlation(), 3)));
    facts.add(
        new Fact(
            "Residual standard deviation",
            small(line.residualStandardDeviation())
                + ", "
                + line.degreesOfFreedom()
                + " degrees of freedom"));
    facts.add(new Fact("Largest residual", small(result.largestResidual())));
    facts.add(new Fact("Linearity error", small(result.linearityError())));
    facts.add(
        new Fact(
            "Hysteresis",
            Double.isNaN(result.hysteresis())
                ? "not known: no level was approached both ways"
                : small(result.hysteresis())));
    facts.add(new Fact("Lack of fit", lackOfFit(result.lackOfFit())));
    return facts;
  }

  private static String withStandard(double value, double uncertainty, String unit) {
    return MeasuredValue.value(value, uncertainty)
        + unit
        + ", standard uncertainty "
        + MeasuredValue.uncertainty(uncertainty)
        + unit;
  }

  private static String lackOfFit(LackOfFit lack) {
    if (lack.method() == LackOfFit.Method.NOT_TESTED) {
      return "not tested: too few points, or no scatter";
    }
    String against =
        lack.method() == LackOfFit.Method.PURE_ERROR
            ? "against the scatter of points of one level"
            : "against a quadratic term";
    return (lack.isSignificant() ? "curved" : "none seen")
        + ": F("
        + lack.numeratorDegreesOfFreedom()
        + ", "
        + lack.denominatorDegreesOfFreedom()
        + ") = "
        + MeasuredValue.figure(lack.f())
        + ", p = "
        + MeasuredValue.figure(lack.p())
        + ", "
        + against;
  }

  /** The law of U that is in force or would be, and what it says at full scale. */
  String statement() {
    boolean signed = sheet.record().isAccepted();
    ExpandedUncertainty bound =
        signed ? sheet.record().finish().uncertainty() : sheet.uncertainty().bound();
    double end = sheet.head().fullScale();
    return "U(x) = "
        + MeasuredValue.uncertainty(bound.constant())
        + " "
        + sheet.unit()
        + " + "
        + MeasuredValue.uncertainty(100 * bound.proportional())
        + " % of |x|, with a coverage probability of 95.45 %; at "
        + amount(end)
        + " that is ± "
        + MeasuredValue.uncertainty(bound.at(end))
        + " "
        + sheet.unit()
        + (signed ? "" : ". It is not in force");
  }

  /** Found and left against the class, or why there is nothing to say. */
  List<Fact> verdict() {
    Conformity found = sheet.outcome().verdict().asFound();
    Conformity left = sheet.outcome().verdict().asLeft();
    if (found == null || left == null) {
      return List.of(
          new Fact("As found, as left", "not judged: there is no uncertainty to judge with"));
    }
    double ratio = sheet.outcome().verdict().testUncertaintyRatio();
    return List.of(
        new Fact("As found", conformity(found)),
        new Fact("As left", conformity(left)),
        new Fact(
            "Guard band",
            MeasuredValue.uncertainty(left.guardBand())
                + " "
                + sheet.unit()
                + " where it was left worst"),
        new Fact("Test uncertainty ratio", Numbers.fixed(ratio, 1) + " to 1 where it is smallest"),
        new Fact("Decision rule", Conformity.RULE));
  }

  private String conformity(Conformity conformity) {
    String words =
        switch (conformity.decision()) {
          case CONFORMS -> "conforms";
          case UNDECIDED -> "too near the limit to tell";
          case FAILS -> "fails";
        };
    return words
        + ": error "
        + signed(conformity.error(), conformity.guardBand())
        + " "
        + sheet.unit()
        + " at "
        + amount(conformity.reference())
        + ", limit ± "
        + amount(conformity.errorLimit())
        + ", accepted up to ± "
        + MeasuredValue.value(conformity.acceptanceLimit(), conformity.guardBand())
        + " "
        + sheet.unit();
  }

  String withdrawal() {
    Withdrawal withdrawal = sheet.record().withdrawal();
    return "Withdrawn from "
        + sheet.moment(withdrawal.fromWallMillis())
        + " on, written down "
        + sheet.moment(withdrawal.wallMillis())
        + " by "
        + VisibleText.of(withdrawal.technicianCode())
        + ": "
        + VisibleText.of(withdrawal.reason());
  }

  /** Where the run of checks stands, in sentences. */
  static List<String> control(ControlChart chart) {
    List<String> words = new ArrayList<>();
    for (ControlRule rule : chart.brokenRules()) {
      words.add(
          "The run is not chance alone: "
              + rule.words()
              + ". Look for the cause, or"
              + " calibrate.");
    }
    if (chart.limits() == null) {
      words.add(
          "Control limits need "
              + ControlChart.FEWEST_FOR_LIMITS
              + " checks that scatter under one calibration; there are "
              + chart.run().size()
              + ".");
    } else if (words.isEmpty()) {
      words.add("The run shows nothing but chance.");
    }
    if (chart.drift() != null) {
      words.add(drift(chart.drift()));
    }
    return words;
  }

  private static String drift(ControlDrift drift) {
    double expanded = 100 * drift.expandedPerMonth();
    String slope =
        "Drift "
            + signed(100 * drift.sharePerMonth(), expanded)
            + " % of the limit a"
            + " month, U "
            + MeasuredValue.uncertainty(expanded)
            + " %: ";
    if (!drift.isSignificant()) {
      return slope + "none that could be told from chance.";
    }
    double months = drift.monthsToLimit();
    if (months == 0) {
      return slope + "the limit is reached.";
    }
    return slope
        + "the limit is reached in about "
        + Numbers.counted((long) Math.ceil(months), "month", "months")
        + ".";
  }

  static String direction(Direction direction) {
    return direction == Direction.RISING ? "rising" : "falling";
  }

  String amount(double value) {
    return MeasuredValue.figure(value) + " " + sheet.unit();
  }

  private String small(double value) {
    return MeasuredValue.uncertainty(value) + " " + sheet.unit();
  }

  /** With its sign, zero without. */
  static String signed(double value, double uncertainty) {
    String text = MeasuredValue.value(value, uncertainty);
    return value > 0 && !text.matches("[0.]*") ? "+" + text : text;
  }

  static String percent(double share) {
    return MeasuredValue.figure(100 * share) + " %";
  }
}
