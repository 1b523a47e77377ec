package org.boothlamp.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.boothlamp.calibration.Channel;

/**
 * Asks for what is not known yet of technician and meter. Each question says unit and example; a
 * wrong answer is asked again. Confined to one thread.
 */
final class HeadQuestions {

  static final String TECHNICIAN_RULE =
      "a technician code is 1 to 16 letters, digits, dots or hyphens, such as K-2, and never a name";

  private static final String TECHNICIAN_CODE = "[A-Za-z0-9][A-Za-z0-9._-]{0,15}";

  /**
   * One question.
   *
   * @param text what is asked
   * @param suggestion what Enter alone stands for; empty if nothing does
   * @param take takes an answer; gives back what is wrong with it, or null
   */
  private record Question(String text, String suggestion, Function<String, String> take) {}

  private final Conversation conversation;
  private final Channel channel;
  private final MeterFacts facts;
  private String technician;

  /**
   * Questions about what is null.
   *
   * @param technician code, or null
   */
  HeadQuestions(Conversation conversation, Channel channel, MeterFacts facts, String technician) {
    this.conversation = conversation;
    this.channel = channel;
    this.facts = facts;
    this.technician = technician;
  }

  static boolean isTechnicianCode(String code) {
    return code.matches(TECHNICIAN_CODE);
  }

  String technician() {
    return technician;
  }

  /** Asks; false if the person leaves. */
  boolean ask() {
    List<Question> questions = questions();
    int next = 0;
    while (next < questions.size()) {
      Question question = questions.get(next);
      String answer = conversation.ask(text(question));
      if (answer == null || answer.equals("leave")) {
        return false;
      }
      if (answer.equals("back")) {
        next = Math.max(0, next - 1);
      } else if (answer.equals("?")) {
        conversation.say("Answer in one line. back: the question before; leave: nothing is kept.");
      } else if (isTaken(question, answer)) {
        next++;
      }
    }
    return true;
  }

  private static String text(Question question) {
    return question.suggestion().isEmpty()
        ? question.text()
        : question.text() + " [" + question.suggestion() + "]";
  }

  private boolean isTaken(Question question, String answer) {
    String wrong = question.take().apply(answer.isEmpty() ? question.suggestion() : answer);
    if (wrong != null && !wrong.isEmpty()) {
      conversation.say(wrong);
    }
    return wrong == null;
  }

  private List<Question> questions() {
    String unit = channel.unit();
    List<Question> questions = new ArrayList<>();
    add(questions, technician, "Technician code, such as K-2 (a code, never a name):", this::code);
    if (facts.make == null) {
      text(questions, "Reference meter, maker and model:", "", t -> facts.make = t);
    }
    if (facts.serial == null) {
      text(questions, "Its serial number:", serialOf(facts.make), t -> facts.serial = t);
    }
    if (facts.certificate == null) {
      text(questions, "Number of its calibration certificate:", "", t -> facts.certificate = t);
    }
    add(
        questions,
        facts.certificateDate,
        "Day of that certificate, such as 2026-03-02:",
        this::certificateDate);
    number(
        questions,
        facts.accuracyPercent,
        "Accuracy by its data sheet: % of the reading, 0 to 20, such as 0.5:",
        20,
        x -> facts.accuracyPercent = x);
    number(
        questions,
        facts.accuracyCounts,
        "and steps of its last digit, 0 to 1000, such as 3:",
        1000,
        x -> facts.accuracyCounts = x);
    number(
        questions,
        facts.resolution,
        "One step of its last digit, in the unit it shows, 0 to 10, such as 0.1 (" + unit + "):",
        10,
        x -> facts.resolution = x);
    return questions;
  }

  private static void add(
      List<Question> questions, Object known, String text, Function<String, String> take) {
    if (known == null) {
      questions.add(new Question(text, "", take));
    }
  }

  private static void text(
      List<Question> questions, String text, String suggestion, Consumer<String> take) {
    questions.add(
        new Question(
            text,
            suggestion,
            answer -> {
              if (answer.isBlank()) {
                return "it must not be empty; copy it from the meter or its certificate";
              }
              take.accept(answer);
              return null;
            }));
  }

  private void number(
      List<Question> questions, Double known, String text, double most, Consumer<Double> take) {
    add(questions, known, text, answer -> takeNumber(answer, most, take));
  }

  private String takeNumber(String answer, double most, Consumer<Double> take) {
    double number = conversation.number(answer);
    if (Double.isNaN(number)) {
      return "";
    }
    if (number < 0 || number > most) {
      return "it must be 0 to "
          + Wording.number(most)
          + ", is "
          + Wording.number(number)
          + "; copy it from the meter's data sheet";
    }
    take.accept(number);
    return null;
  }

  private String code(String answer) {
    if (!isTechnicianCode(answer)) {
      return TECHNICIAN_RULE + ", is \"" + answer + "\"";
    }
    technician = answer;
    return null;
  }

  private String certificateDate(String answer) {
    try {
      facts.certificateDate = LocalDate.parse(answer);
      return null;
    } catch (DateTimeParseException wrong) {
      return "a day is year-month-day like 2026-03-02, is \"" + answer + "\"";
    }
  }

  /** The third of the four fields of an identity (IEEE 488.2), unless it says 0 for not known. */
  private static String serialOf(String identity) {
    String[] fields = identity == null ? new String[0] : identity.split(",");
    return fields.length == 4 && !fields[2].strip().equals("0") ? fields[2].strip() : "";
  }
}
