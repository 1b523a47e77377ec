package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/** Whom to stand beside and what to look at, as a part of the text report. */
final class GlanceText {

  private static final int INDENT = 2;

  private final Glance glance;
  private final TextPage page;
  private final ShiftWords words = new ShiftWords(Phrases.in(Language.ENGLISH), Units.METRIC);

  GlanceText(Glance glance, TextPage page) {
    this.glance = glance;
    this.page = page;
  }

  void append() {
    page.heading("WHAT TO LOOK AT");
    for (GlanceRow row : glance.rows()) {
      row(row);
    }
    page.newLine();
    page.wrapped("", 0, words.say("notes.operator") + " " + words.dividedBy(glance.shift()));
  }

  private void row(GlanceRow row) {
    String name = VisibleText.of(words.trainee(row.summary().trainee()));
    String beside = glance.standBeside().contains(row) ? "  <- stand beside" : "";
    page.nameLine(name + beside);
    String oftenest = words.oftenest(row);
    String look = (oftenest.isEmpty() ? "" : oftenest + ". ") + words.lookAt(row);
    page.wrapped(" ".repeat(INDENT), INDENT, look);
    page.wrapped(" ".repeat(INDENT), INDENT, String.join("; ", figures(row)));
  }

  private List<String> figures(GlanceRow row) {
    List<String> figures = new ArrayList<>();
    OperatorFactor operator = row.operator();
    if (!Double.isNaN(operator.ofShift())) {
      figures.add("operator factor " + Numbers.share(operator.ofShift()));
    }
    if (!Double.isNaN(operator.ofSignedIn())) {
      String signedIn = Durations.words(operator.signedInSeconds());
      figures.add(words.say("operator.signed-in", Numbers.share(operator.ofSignedIn()), signedIn));
    }
    if (row.change() != null) {
      figures.add(words.change(row.change()) + " (" + words.comparedWith(row.change()) + ")");
    }
    return figures.isEmpty() ? List.of("nothing before to compare with") : figures;
  }
}
