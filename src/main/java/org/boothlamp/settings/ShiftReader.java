package org.boothlamp.settings;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Reads the shifts and sees that each moment of the day belongs to one at most. */
final class ShiftReader {

  private static final TextRule TIME =
      new TextRule(
          "a time of day from \"00:00\" to \"23:59\"",
          Pattern.compile("([01][0-9]|2[0-3]):[0-5][0-9]"));

  private static final int DAY_MINUTES = 24 * 60;

  private final List<ShiftSettings> shifts = new ArrayList<>();

  List<ShiftSettings> read(List<Section> sections) {
    for (Section section : sections) {
      read(section);
    }
    return shifts;
  }

  private void read(Section section) {
    String name = section.requiredText("name", TextRule.NAME, "early");
    String start = section.requiredText("start", TIME, "07:00");
    String end = section.requiredText("end", TIME, "15:00");
    if (!section.isSound("name") || !section.isSound("start") || !section.isSound("end")) {
      return;
    }
    ShiftSettings shift = new ShiftSettings(name, LocalTime.parse(start), LocalTime.parse(end));
    if (isRefused(section, shift)) {
      return;
    }
    shifts.add(shift);
  }

  private boolean isRefused(Section section, ShiftSettings shift) {
    if (shift.start().equals(shift.end())) {
      section.refuse(
          "end",
          "must differ from start, but both are " + Literal.of(shift.end().toString()),
          "correct one of them; without any [[shift]] reports go by whole days");
      return true;
    }
    for (ShiftSettings other : shifts) {
      if (isRefusedBeside(section, shift, other)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isRefusedBeside(
      Section section, ShiftSettings shift, ShiftSettings other) {
    if (shift.name().equals(other.name())) {
      section.refuse(
          "name",
          "must be given once, but " + Literal.of(shift.name()) + " is there already",
          "give this shift another name");
      return true;
    }
    if (overlap(shift, other)) {
      section.refuse(
          "start",
          "shifts must not overlap, but " + span(shift) + " overlaps " + span(other),
          "end one where the other begins");
      return true;
    }
    return false;
  }

  private static String span(ShiftSettings shift) {
    return Literal.of(shift.name()) + " (" + shift.start() + " to " + shift.end() + ")";
  }

  /** Two spans on the circle of a day meet if either holds the start of the other. */
  private static boolean overlap(ShiftSettings one, ShiftSettings other) {
    return holds(one, other.start()) || holds(other, one.start());
  }

  private static boolean holds(ShiftSettings shift, LocalTime time) {
    return minutesFrom(shift.start(), time) < minutesFrom(shift.start(), shift.end());
  }

  private static int minutesFrom(LocalTime start, LocalTime time) {
    int minutes = (time.toSecondOfDay() - start.toSecondOfDay()) / 60;
    return Math.floorMod(minutes, DAY_MINUTES);
  }
}
