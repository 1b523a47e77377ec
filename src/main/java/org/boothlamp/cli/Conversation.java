package org.boothlamp.cli;

/**
 * Questions to a person and their answers, one line each. While a person thinks, samples go on
 * being taken if somebody says how. Confined to one thread.
 */
final class Conversation {

  private final Terminal terminal;
  private final TypedLines lines;
  private Runnable meanwhile;

  Conversation(Terminal terminal) {
    this.terminal = terminal;
    lines = new TypedLines(terminal.in());
  }

  /**
   * What is done again and again while an answer is waited for; each time a fraction of a second.
   */
  void meanwhile(Runnable work) {
    meanwhile = work;
  }

  void say(String text) {
    terminal.out().println(text);
  }

  /** The answer without blanks around it; null if nobody types any more. */
  String ask(String question) {
    terminal.out().println(question);
    terminal.out().print("> ");
    terminal.out().flush();
    String line = meanwhile == null ? lines.next() : lines.next(meanwhile);
    if (!terminal.interactive()) {
      // what was typed is not on the screen
      terminal.out().println();
    }
    return line == null ? null : line.strip();
  }

  /** What was typed without being asked, or null. */
  String overheard() {
    String line = meanwhile == null ? null : lines.poll();
    return line == null ? null : line.strip();
  }

  /** True for yes; asks again until it is yes or no. No if nobody types any more. */
  boolean confirms(String question) {
    while (true) {
      String answer = ask(question + " (yes or no)");
      if (answer == null || answer.equalsIgnoreCase("no") || answer.equalsIgnoreCase("n")) {
        return false;
      }
      if (answer.equalsIgnoreCase("yes") || answer.equalsIgnoreCase("y")) {
        return true;
      }
      say("\"" + answer + "\" is neither; type yes or no");
    }
  }

  /**
   * The number an answer stands for. What could be meant otherwise is asked back and never guessed.
   *
   * @return NaN if it stands for none; the person was told then
   */
  double number(String answer) {
    NumberText number = NumberText.of(answer);
    if (number.isNumber()) {
      return number.value();
    }
    if (number.couldMean().size() == 1) {
      boolean meant = confirms("\"" + answer + "\": " + number.question());
      return meant ? Double.parseDouble(number.couldMean().get(0)) : Double.NaN;
    }
    say("\"" + answer + "\": " + number.question());
    return Double.NaN;
  }
}
