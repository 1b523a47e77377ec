package org.boothlamp.report;

import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/** The class at a glance as a table: of each trainee a row of figures and one sentence. */
final class GlanceTable {

  private static final int COLUMNS = 8;
  private static final String NOTHING = "–";

  private final ShiftReport report;
  private final Glance glance;
  private final ShiftWords words;
  private final Markup page;

  GlanceTable(ShiftReport report, Glance glance, ShiftWords words, Markup page) {
    this.report = report;
    this.glance = glance;
    this.words = words;
    this.page = page;
  }

  /** Whom to stand beside, then the table. */
  void append() {
    standBeside();
    page.open("table", "class", "glance");
    names();
    for (int i = 0; i < glance.rows().size(); i++) {
      row(glance.rows().get(i), anchor(i));
    }
    if (glance.rows().size() > 1) {
      total();
    }
    page.close();
    page.open("p", "class", "notes").leaf("a", words.say("notes.link"), "href", "#notes").close();
  }

  /** Where a trainee's runs are in the page. */
  static String anchor(int row) {
    return "trainee-" + (row + 1);
  }

  private void standBeside() {
    if (glance.standBeside().isEmpty()) {
      page.leaf("p", words.say("beside.none"), "class", "box good");
      return;
    }
    page.open("div", "class", "box bad").leaf("strong", words.say("beside")).open("ol");
    for (GlanceRow row : glance.standBeside()) {
      page.open("li").leaf("strong", words.shortTrainee(row.summary().trainee()));
      page.text(" ");
      look(row);
      page.close();
    }
    page.close().close();
  }

  private void names() {
    page.open("thead").open("tr");
    page.leaf("th", words.say("column.trainee"), "class", "word", "scope", "col");
    for (String column : List.of("runs", "arc", "inside", "amps", "volts", "operator", "change")) {
      page.leaf("th", words.say("column." + column), "scope", "col");
    }
    page.leaf("th", words.say("column.look"), "class", "word wide", "scope", "col");
    page.close().close();
  }

  private void row(GlanceRow row, String anchor) {
    Figures figures = row.summary().total();
    page.open("tbody").open("tr", "class", "figures");
    page.open("td", "class", "name word");
    page.leaf("a", words.shortTrainee(row.summary().trainee()), "href", "#" + anchor);
    if (report.booth().isEmpty() && !row.booths().isEmpty()) {
      page.leaf("small", String.join(", ", row.booths()));
    }
    page.close();
    cell("runs", Integer.toString(figures.runs()));
    cell("arc", Durations.words(figures.arcSeconds()));
    inside(figures);
    means(row.summary(), Quantity.AMPS, "amps");
    means(row.summary(), Quantity.VOLTS, "volts");
    operator(row.operator());
    change(row.change());
    page.open("td", "class", "word wide");
    look(row);
    page.close().close().open("tr", "class", "look");
    page.open("td", "class", "word", "colspan", Integer.toString(COLUMNS));
    look(row);
    page.close().close().close();
  }

  /** The sentence stands in a column where the page is wide, and in a row of its own elsewhere. */
  private void look(GlanceRow row) {
    String oftenest = words.oftenest(row);
    if (!oftenest.isEmpty()) {
      page.leaf("strong", oftenest + ".").text(" ");
    }
    page.text(words.lookAt(row));
  }

  private void cell(String column, String text) {
    openCell(column).text(text).close();
  }

  private Markup openCell(String column) {
    return page.open("td", "class", "tight", "data-label", words.say("column." + column));
  }

  private void inside(Figures figures) {
    openCell("inside").leaf("div", words.share(figures.insideShare()));
    LevelDrawing.bar(page, figures, levels(figures));
    page.close();
  }

  private String levels(Figures figures) {
    return words.say(
        "levels",
        Durations.words(figures.greenSeconds()),
        Durations.words(figures.amberSeconds()),
        Durations.words(figures.redSeconds()));
  }

  /** One line a pass: means of different passes mixed would say nothing. */
  private void means(TraineeSummary trainee, Quantity quantity, String column) {
    openCell(column).text(trainee.passes().isEmpty() ? NOTHING : "");
    for (PassSummary pass : trainee.passes()) {
      double mean =
          quantity == Quantity.AMPS ? pass.figures().meanAmps() : pass.figures().meanVolts();
      mean(mean, pass.pass(), quantity);
    }
    page.close();
  }

  private void mean(double mean, PassKey pass, Quantity quantity) {
    Window window = pass.window(quantity);
    String side = words.side(mean, window);
    page.open("div").text(Words.value(quantity, mean));
    if (!side.isEmpty()) {
      page.text(" ").leaf("span", side, "class", "off");
    }
    if (window != null) {
      String limits = Numbers.plain(window.low()) + "–" + Numbers.plain(window.high());
      page.text(" ").leaf("span", (pass.pass() + " " + limits).strip(), "class", "small");
    }
    page.close();
  }

  private void operator(OperatorFactor operator) {
    openCell("operator").text(known(operator.ofShift()));
    if (!Double.isNaN(operator.ofSignedIn())) {
      page.leaf(
          "small",
          words.say(
              "operator.signed-in",
              Numbers.share(operator.ofSignedIn()),
              Durations.words(operator.signedInSeconds())));
    }
    page.close();
  }

  private static String known(double share) {
    return Double.isNaN(share) ? "?" : Numbers.share(share);
  }

  private void change(ChangeAgainstLastShifts change) {
    openCell("change");
    if (change == null) {
      page.text(NOTHING);
    } else {
      page.text(words.change(change)).leaf("small", words.comparedWith(change));
    }
    page.close();
  }

  private void total() {
    Figures figures = report.total();
    page.open("tbody").open("tr", "class", "figures");
    page.leaf("td", words.say("all"), "class", "name word");
    cell("runs", Integer.toString(figures.runs()));
    cell("arc", Durations.words(figures.arcSeconds()));
    inside(figures);
    page.leaf("td", "", "colspan", "4").leaf("td", "", "class", "wide");
    page.close().close();
  }

  /** What the columns mean. */
  void appendNotes() {
    page.open("section", "id", "notes").leaf("h2", words.say("notes"));
    page.leaf("p", words.say("notes.inside"));
    page.leaf("p", words.say("notes.means"));
    page.leaf("p", words.say("notes.operator") + " " + words.dividedBy(glance.shift()));
    page.leaf("p", words.say(isSignedInKnown() ? "notes.signed-in" : "notes.signed-in.unknown"));
    page.leaf("p", words.say("notes.change"));
    page.leaf("p", words.say("notes.beside"));
    page.close();
  }

  private boolean isSignedInKnown() {
    return glance.rows().stream().anyMatch(row -> !Double.isNaN(row.operator().ofSignedIn()));
  }
}
