package org.boothlamp.report;

/** The style sheet of a shift's page: one for a phone, a projector, A4 and Letter. */
final class ShiftStyle {

  private static final String SHEET =
      """
      @page { margin: 12mm; }
      * { box-sizing: border-box; }
      html { background: $PAPER; font-size: clamp(15px, 11px + 0.5vw, 21px); }
      body { margin: 0; padding: 0.8rem 1.1rem; color: $INK; background: $PAPER;
        font: 1rem/1.35 "Liberation Sans", "DejaVu Sans", Arial, sans-serif;
        font-variant-numeric: tabular-nums; }
      h1 { font-size: 1.5rem; line-height: 1.2; margin: 0; }
      h2 { font-size: 1.15rem; margin: 1.4rem 0 0.4rem; border-bottom: 2px solid $RULE;
        break-after: avoid; }
      h3 { font-size: 1rem; margin: 0.6rem 0 0.1rem; }
      p { margin: 0.2rem 0; }
      ul { margin: 0.2rem 0; padding-left: 1.2rem; }
      a { color: inherit; }
      h1, h2, h3, p, li, td { unicode-bidi: isolate; overflow-wrap: break-word; min-width: 0; }
      h2, h3, li { overflow-wrap: anywhere; }
      .sub { color: $MUTED; }
      .box { border: 1px solid; border-left-width: 0.4rem; padding: 0.4rem 0.8rem;
        margin: 0.7rem 0; break-inside: avoid; }
      .bad { color: $BAD; background: $BAD_TINT; }
      .good { color: $GOOD; background: $GOOD_TINT; }
      .doubt { color: $DOUBT; background: $DOUBT_TINT; }
      .plain { color: $INK_ON_TINT; background: $TINT; }
      .box ol { margin: 0.2rem 0; padding-left: 1.4rem; display: flex; flex-wrap: wrap;
        gap: 0 2.4rem; }
      .notes { color: $MUTED; font-size: 0.8rem; }
      table { border-collapse: collapse; width: 100%; }
      th { color: $INK_ON_TINT; background: $TINT; text-align: right; vertical-align: bottom; }
      th, td { padding: 0.15rem 0.45rem; line-height: 1.25; }
      td { text-align: right; vertical-align: top; }
      th.word, td.word { text-align: left; }
      td.name { font-weight: bold; }
      td small { color: $MUTED; font-size: 0.8em; display: block; font-weight: normal;
        white-space: normal; }
      td .small { color: $MUTED; font-size: 0.8em; }
      .off { color: $BAD; font-weight: bold; }
      .glance tbody { border-bottom: 1px solid $RULE; break-inside: avoid; }
      .glance tr.look td { padding-top: 0; padding-bottom: 0.35rem; }
      .glance .wide { display: none; }
      .glance td .small { display: block; }
      @media screen and (min-width: 1400px) {
        td.tight { white-space: nowrap; }
        .glance td .small { display: inline; }
        .glance .wide { display: table-cell; width: 30%; }
        .glance tr.look { display: none; }
      }
      thead { display: table-header-group; }
      svg { display: block; }
      svg.bar { width: 100%; min-width: 4.5rem; height: 0.8rem; }
      svg.key { display: inline-block; width: 1.8rem; height: 0.9rem; vertical-align: -0.1rem; }
      svg.strip { width: 100%; height: auto; }
      svg text { fill: $INK; font-size: 10px; }
      .strips { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 21rem), 1fr));
        gap: 0.6rem 1.2rem; }
      .run { break-inside: avoid; min-width: 0; }
      .run p { font-size: 0.9rem; }
      details { border-top: 1px solid $RULE; margin-top: 0.8rem; }
      summary { cursor: pointer; }
      summary h2 { display: inline; border: 0; }
      .frame { fill: none; stroke: $RULE; stroke-width: 0.8; }
      .grid { stroke: $RULE; stroke-width: 0.5; stroke-dasharray: 1 3; }
      .limit { stroke: $BAND_EDGE; stroke-width: 1; stroke-dasharray: 5 3; }
      .zero { stroke: $INK; stroke-width: 0.8; }
      .band { fill: $BAND; }
      .range { fill: $RULE; fill-opacity: 0.45; }
      .trace { fill: none; stroke: $TRACE; stroke-width: 1.1; stroke-linejoin: round; }
      .outside { fill: $OUTSIDE; }
      .outside-mark { fill: $OUTSIDE_MARK; }
      .hollow { fill: $PAPER; stroke: $MARK; stroke-width: 1.2; }
      .unjudged { fill: $PAPER; stroke: $RULE; stroke-width: 1; }
      .lv-green { fill: $GREEN; }
      .lv-amber { fill: $AMBER; }
      .lv-red { fill: $RED; }
      footer { margin-top: 1.2rem; color: $MUTED; font-size: 0.85rem; }
      @media screen and (max-width: 760px) {
        .glance, .glance tbody, .glance tr, .glance td { display: block; }
        .glance thead { display: none; }
        .glance tbody { padding: 0.4rem 0; }
        .glance .wide { display: none; }
        .glance tr.figures { display: grid; grid-template-columns: 1fr 1fr; }
        .glance td { text-align: left; padding: 0.1rem 0.3rem; }
        .glance td[data-label]::before { content: attr(data-label); display: block;
          color: $MUTED; font-size: 0.75rem; }
        .glance td.name { grid-column: 1 / -1; font-size: 1.15rem; }
      }
      @media print {
        html { font-size: 8.5pt; }
        body { padding: 0; }
        th, td { padding: 0.15rem 0.3rem; }
        .strips { grid-template-columns: 1fr 1fr; }
        h3, details > p, summary { break-after: avoid; }
        * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
      }
      """;

  private ShiftStyle() {}

  /** The sheet with its colours filled in. */
  static String sheet() {
    String sheet = PageStyle.coloured(SHEET);
    for (LevelColour colour : LevelColour.values()) {
      sheet = PageStyle.coloured(sheet, colour.name(), colour.hex());
    }
    return sheet;
  }
}
