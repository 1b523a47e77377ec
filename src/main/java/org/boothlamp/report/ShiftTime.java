package org.boothlamp.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How long the shift was that arc-on time is held against. Immutable.
 *
 * @param basis what it was taken from
 * @param names of the shifts of the settings, in order of time; empty with another basis
 * @param stretches in order of time, without overlap
 */
public record ShiftTime(Basis basis, List<String> names, List<Stretch> stretches) {

  /** What a shift's length was taken from. */
  public enum Basis {
    /** The shifts of the settings in which something was welded. */
    SHIFTS,
    /** The times that the report was asked for. */
    ASKED,
    /** From the first contact of each day to the end of the last. */
    FIRST_TO_LAST;

    /** The word for files. */
    public String word() {
      return switch (this) {
        case SHIFTS -> "shifts";
        case ASKED -> "asked";
        case FIRST_TO_LAST -> "first_to_last";
      };
    }
  }

  /**
   * A stretch of time.
   *
   * @param fromWallMillis ms since the epoch, inside
   * @param untilWallMillis likewise, outside
   */
  public record Stretch(long fromWallMillis, long untilWallMillis) {

    /** Part of another stretch that lies in this one, s. */
    double sharedSeconds(long from, long until) {
      long shared = Math.min(untilWallMillis, until) - Math.max(fromWallMillis, from);
      return Math.max(0, shared) / 1_000.0;
    }
  }

  public ShiftTime {
    names = List.copyOf(names);
    stretches = List.copyOf(stretches);
  }

  /**
   * The shift's length, from the best that is known: the school's hours; else the times asked for;
   * else, where only days were asked for, from the first to the last contact of each.
   *
   * @param records of the whole class
   * @param hours in order of the settings; empty if not known
   * @param nowWallMillis time of day at which the report is made; no shift lasts beyond it
   */
  public static ShiftTime of(
      ShiftRecords records, ShiftSpan span, List<ShiftHours> hours, long nowWallMillis) {
    List<Stretch> contacts = contacts(records);
    long end = Math.min(span.untilWallMillis(), Math.max(nowWallMillis, lastEnd(contacts)));
    ShiftTime byHours = byHours(contacts, span, hours, end);
    if (!byHours.stretches.isEmpty()) {
      return byHours;
    }
    return span.isOfWholeDays() || end <= span.fromWallMillis()
        ? firstToLast(contacts, span)
        : new ShiftTime(Basis.ASKED, List.of(), List.of(new Stretch(span.fromWallMillis(), end)));
  }

  private static List<Stretch> contacts(ShiftRecords records) {
    List<Stretch> contacts = new ArrayList<>();
    for (RunRecord run : records.runs()) {
      contacts.add(contact(run.startWallMillis(), run.lengthSeconds()));
    }
    for (TouchRecord touch : records.touches()) {
      contacts.add(contact(touch.startWallMillis(), touch.lengthSeconds()));
    }
    return contacts;
  }

  private static Stretch contact(long startWallMillis, double seconds) {
    return new Stretch(startWallMillis, startWallMillis + Math.round(1_000 * seconds));
  }

  private static long lastEnd(List<Stretch> contacts) {
    return contacts.stream().mapToLong(Stretch::untilWallMillis).max().orElse(Long.MIN_VALUE);
  }

  private static ShiftTime byHours(
      List<Stretch> contacts, ShiftSpan span, List<ShiftHours> hours, long end) {
    TreeSet<Long> starts = new TreeSet<>();
    contacts.forEach(contact -> starts.add(contact.fromWallMillis()));
    TreeMap<Long, Stretch> stretches = new TreeMap<>();
    List<String> names = new ArrayList<>();
    for (ShiftHours shift : hours) {
      boolean used = false;
      for (Stretch stretch : occurrences(shift, span, end)) {
        Long start = starts.ceiling(stretch.fromWallMillis());
        if (start != null && start < stretch.untilWallMillis()) {
          stretches.put(stretch.fromWallMillis(), stretch);
          used = true;
        }
      }
      if (used) {
        names.add(shift.name());
      }
    }
    return new ShiftTime(Basis.SHIFTS, names, List.copyOf(stretches.values()));
  }

  /** A shift that crosses midnight may have begun on the day before the span. */
  private static List<Stretch> occurrences(ShiftHours shift, ShiftSpan span, long end) {
    List<Stretch> found = new ArrayList<>();
    LocalDate last = span.local(end).toLocalDate();
    LocalDate day = span.local(span.fromWallMillis()).toLocalDate().minusDays(1);
    for (; !day.isAfter(last); day = day.plusDays(1)) {
      boolean overMidnight = !shift.end().isAfter(shift.start());
      long from = millis(day.atTime(shift.start()), span);
      long until = millis(day.plusDays(overMidnight ? 1 : 0).atTime(shift.end()), span);
      Stretch stretch = new Stretch(Math.max(from, span.fromWallMillis()), Math.min(until, end));
      if (stretch.untilWallMillis() > stretch.fromWallMillis()) {
        found.add(stretch);
      }
    }
    return found;
  }

  private static long millis(LocalDateTime time, ShiftSpan span) {
    return time.atZone(span.zone()).toInstant().toEpochMilli();
  }

  private static ShiftTime firstToLast(List<Stretch> contacts, ShiftSpan span) {
    TreeMap<LocalDate, Stretch> days = new TreeMap<>();
    for (Stretch contact : contacts) {
      days.merge(
          span.local(contact.fromWallMillis()).toLocalDate(), contact, ShiftTime::fromFirstToLast);
    }
    return new ShiftTime(Basis.FIRST_TO_LAST, List.of(), List.copyOf(days.values()));
  }

  private static Stretch fromFirstToLast(Stretch one, Stretch other) {
    return new Stretch(
        Math.min(one.fromWallMillis(), other.fromWallMillis()),
        Math.max(one.untilWallMillis(), other.untilWallMillis()));
  }

  /** Its length, s; 0 if nothing was welded and no times are known. */
  public double seconds() {
    return stretches.stream()
        .mapToDouble(one -> one.sharedSeconds(one.fromWallMillis(), one.untilWallMillis()))
        .sum();
  }

  /** Part of a stretch of time that lies in the shift, s. */
  double sharedSeconds(long fromWallMillis, long untilWallMillis) {
    return stretches.stream()
        .mapToDouble(one -> one.sharedSeconds(fromWallMillis, untilWallMillis))
        .sum();
  }
}
