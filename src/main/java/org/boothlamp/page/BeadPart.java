package org.boothlamp.page;

import org.boothlamp.report.BeadRule;
import org.boothlamp.report.HeatVerdict;
import org.boothlamp.report.Markup;
import org.boothlamp.report.ReferenceWeld;
import org.boothlamp.report.RunRecord;

/** What was seen of a run after the weld: its bead, what follows from it, an instructor's mark. */
final class BeadPart implements RunPart {

  private final Layout layout;
  private final BeadDesk desk;

  BeadPart(Layout layout, BeadDesk desk) {
    this.layout = layout;
    this.desk = desk;
  }

  @Override
  public void append(Markup page, RunRecord run, Request request) {
    boolean ended = !run.end().equals("running");
    boolean mayEnter = request.visitor().may(Right.ENTER);
    if (!ended || run.notes().bead() == null && !mayEnter) {
      return;
    }
    page.open("section", "class", "bead").leaf("h2", layout.say("page.bead"));
    appendKnown(page, run);
    if (mayEnter) {
      appendForm(page, run, request);
    }
    page.close();
    appendReference(page, run, request);
  }

  private void appendKnown(Markup page, RunRecord run) {
    HeatVerdict verdict = desk.verdict(run);
    if (verdict == null) {
      return;
    }
    desk.words(run, verdict).forEach(line -> page.leaf("p", line));
    String note = run.notes().bead().note();
    if (!note.isEmpty()) {
      page.leaf("p", layout.say("page.bead.said", note));
    }
  }

  private void appendForm(Markup page, RunRecord run, Request request) {
    String unit = layout.units().lengthUnit();
    layout.form(page, request, BeadView.PATH + run.id(), "class", "entry");
    page.leaf("label", layout.say("page.bead.length", unit), "for", "length");
    page.empty(
        "input",
        "id",
        "length",
        "name",
        "length",
        "required",
        "required",
        "inputmode",
        "decimal",
        "maxlength",
        "12",
        "autocomplete",
        "off");
    note(page, "note", layout.say("page.bead.note"));
    page.leaf("button", layout.say("page.bead.do"), "type", "submit").close();
  }

  private static void note(Markup page, String name, String label) {
    page.leaf("label", label, "for", name);
    page.empty(
        "input",
        "id",
        name,
        "name",
        name,
        "maxlength",
        Integer.toString(BeadRule.LONGEST_NOTE),
        "autocomplete",
        "off");
  }

  private void appendReference(Markup page, RunRecord run, Request request) {
    ReferenceWeld mark = run.notes().reference();
    boolean mayMark = request.visitor().may(Right.CLASS);
    if (mark == null && !mayMark) {
      return;
    }
    page.open("section", "class", "reference").leaf("h2", layout.say("page.reference"));
    if (mark != null) {
      String words =
          mark.words().isEmpty()
              ? layout.say("bead.reference")
              : layout.say("bead.reference.words", mark.words());
      page.leaf("p", words);
    }
    if (mayMark) {
      appendMarking(page, run, request);
    }
    page.close();
  }

  private void appendMarking(Markup page, RunRecord run, Request request) {
    boolean marked = run.notes().isReference();
    layout.form(page, request, BeadView.PATH + run.id(), "class", "entry");
    if (!marked) {
      note(page, "words", layout.say("page.reference.words"));
    }
    page.leaf(
            "button",
            layout.say(marked ? "page.reference.withdraw" : "page.reference.mark"),
            "type",
            "submit",
            "name",
            "reference",
            "value",
            marked ? "withdraw" : "mark",
            "class",
            marked ? "second" : "first")
        .close();
  }
}
