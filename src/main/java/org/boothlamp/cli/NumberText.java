package org.boothlamp.cli;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A number as people type it, read without guessing: a full stop before the decimals, nothing
 * between thousands, no unit. What could be meant otherwise is a question and no number. Immutable.
 *
 * @param value the number; NaN if the text is none
 * @param couldMean what the text could mean, as numbers to be typed; empty with a value, or if
 *     there is no telling
 * @param why what is wrong with the text; empty with a value
 */
record NumberText(double value, List<String> couldMean, String why) {

  private static final Pattern PLAIN =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,2})?");

  /** A number and a unit with or without milli or kilo behind it. */
  private static final Pattern WITH_UNIT = Pattern.compile("(.*[0-9.])\\s*([mk]?)([AV])");

  private static final Pattern SIGNED_MARKS = Pattern.compile("[+-]?\\d[\\d.,' ]*");
  private static final Pattern WHOLE =
      Pattern.compile("[+-]?(\\d+|\\d{1,3}([., '])\\d{3}(\\2\\d{3})*)");
  private static final Pattern DECIMALS = Pattern.compile("(\\.\\d+)?");

  /** Reads a text; blanks around it do not matter. */
  static NumberText of(String text) {
    String typed = text.strip();
    if (PLAIN.matcher(typed).matches()) {
      return new NumberText(Double.parseDouble(typed), List.of(), "");
    }
    Matcher unit = WITH_UNIT.matcher(typed);
    if (unit.matches()) {
      return withUnit(unit.group(1), unit.group(2), unit.group(3));
    }
    if (SIGNED_MARKS.matcher(typed).matches()) {
      return new NumberText(
          Double.NaN, meanings(typed), "a number has a full stop and no comma or grouping");
    }
    return new NumberText(Double.NaN, List.of(), "that is no number");
  }

  boolean isNumber() {
    return !Double.isNaN(value);
  }

  /** What to do about it, for people; only if it is no number. */
  String question() {
    return couldMean.isEmpty()
        ? why + "; type it like 104.3"
        : why + "; did you mean " + couldMean.stream().collect(Collectors.joining(" or ")) + "?";
  }

  private static NumberText withUnit(String digits, String prefix, String unit) {
    NumberText number = of(digits);
    List<String> meant = number.isNumber() ? List.of(digits.strip()) : number.couldMean();
    int exponent = prefix.isEmpty() ? 0 : prefix.equals("m") ? -3 : 3;
    return new NumberText(
        Double.NaN,
        meant.stream().map(text -> scaled(text, exponent)).toList(),
        "a number stands without its unit, always in " + unit);
  }

  private static String scaled(String plain, int exponent) {
    return new BigDecimal(plain).scaleByPowerOfTen(exponent).toPlainString();
  }

  /** As a decimal mark and as thousands, as far as either can be. */
  private static List<String> meanings(String typed) {
    Stream.Builder<String> meanings = Stream.builder();
    int mark = Math.max(typed.lastIndexOf(','), typed.lastIndexOf('.'));
    if (mark >= 0 && typed.indexOf(typed.charAt(mark)) == mark) {
      addIfGrouped(meanings, typed.substring(0, mark), "." + typed.substring(mark + 1));
    }
    addIfGrouped(meanings, typed, "");
    return meanings.build().toList();
  }

  /** Whole digits, or groups of three with one mark between them all. */
  private static void addIfGrouped(Stream.Builder<String> meanings, String whole, String decimals) {
    if (WHOLE.matcher(whole).matches() && DECIMALS.matcher(decimals).matches()) {
      meanings.add(whole.replaceAll("[., ']", "") + decimals);
    }
  }

  /** For options: a refusal that asks back instead of "is not a double". */
  static final class Option implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
      NumberText number = of(text);
      if (!number.isNumber()) {
        throw new TypeConversionException("\"" + text + "\": " + number.question());
      }
      return number.value();
    }
  }
}
