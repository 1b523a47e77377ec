package org.boothlamp.report;

/** The style sheet of a printed page: one for screen, A4 and Letter. */
final class PageStyle {

  private static final String SHEET =
      """
      @page { margin: 13mm 14mm 12mm; }
      * { box-sizing: border-box; }
      html { background: $TINT; }
      body { margin: 0 auto; padding: 13mm 14mm; max-width: 210mm; background: $PAPER;
        color: $INK; font: 9.5pt/1.35 "Liberation Sans", "DejaVu Sans", Arial, sans-serif; }
      h1 { font-size: 17pt; line-height: 1.2; margin: 0; }
      h2 { font-size: 10.5pt; margin: 4mm 0 1.2mm; border-bottom: 0.3mm solid $RULE;
        break-after: avoid; }
      p { margin: 0.8mm 0; }
      header { display: flex; justify-content: space-between; align-items: flex-start; gap: 6mm; }
      .sub { color: $MUTED; font-size: 11pt; }
      .box { border: 0.4mm solid; border-left-width: 2mm; padding: 1.5mm 3mm; margin: 2mm 0;
        break-inside: avoid; }
      .stamp { margin: 0; font-weight: bold; max-width: 72mm; }
      .good { color: $GOOD; background: $GOOD_TINT; }
      .bad { color: $BAD; background: $BAD_TINT; }
      .doubt { color: $DOUBT; background: $DOUBT_TINT; }
      .plain { color: $INK_ON_TINT; background: $TINT; }
      .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0 8mm; }
      .pair > * { min-width: 0; }
      dl { display: grid; grid-template-columns: max-content 1fr; gap: 0 3mm; margin: 0;
        align-content: start; }
      .box dl { grid-template-columns: 38mm 1fr; }
      dt { color: $MUTED; }
      .box dt { color: inherit; }
      dd { margin: 0; }
      dd, td, li, p, h1 { unicode-bidi: isolate; }
      dd, li, p, h1, td.free { overflow-wrap: anywhere; }
      ul { margin: 1mm 0; padding-left: 5mm; }
      table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums;
        line-height: 1.2; }
      th { color: $INK_ON_TINT; background: $TINT; font-weight: bold; }
      th, td { padding: 0.35mm 1.5mm; text-align: right; vertical-align: top;
        white-space: nowrap; }
      td { border-bottom: 0.1mm solid $RULE; }
      th.word, td.word { text-align: left; }
      td.free { text-align: left; white-space: normal; min-width: 30mm; }
      td.free, th.last { width: 99%; }
      .whole { break-inside: avoid; }
      tr { break-inside: avoid; }
      .wide { overflow-x: auto; }
      .wide table { font-size: 7.5pt; }
      .wide th, .wide td { padding: 0.35mm 0.7mm; }
      tr.sum td { font-weight: bold; }
      thead { display: table-header-group; }
      figure { margin: 1mm 0 0; break-inside: avoid; }
      figcaption { color: $MUTED; font-size: 8.5pt; }
      svg { display: block; width: 100%; height: auto; }
      svg text { fill: $INK; font-size: 9px; }
      .frame { fill: none; stroke: $RULE; stroke-width: 0.8; }
      .grid { stroke: $RULE; stroke-width: 0.4; stroke-dasharray: 1 3; }
      .zero { stroke: $INK; stroke-width: 0.7; }
      .band { fill: $BAND; stroke: $BAND_EDGE; stroke-width: 0.8; }
      .limit { fill: none; stroke: $LIMIT; stroke-width: 1.2; }
      .inner { fill: none; stroke: $LIMIT; stroke-width: 1; stroke-dasharray: 5 3; }
      .centre { fill: none; stroke: $BAND_EDGE; stroke-width: 1; stroke-dasharray: 7 2 1 2; }
      .control { fill: none; stroke: $BAND_EDGE; stroke-width: 1; stroke-dasharray: 4 3; }
      .change { stroke: $MUTED; stroke-width: 0.8; stroke-dasharray: 2 2; }
      .full { fill: $MARK; stroke: $MARK; stroke-width: 1; }
      .hollow { fill: $PAPER; stroke: $MARK; stroke-width: 1.1; }
      .ring, .cross { fill: none; stroke: $MARK; stroke-width: 1.1; }
      .sign { display: grid; grid-template-columns: 2fr 2fr 1fr; gap: 8mm; margin-top: 13mm;
        break-inside: avoid; }
      .sign div { border-top: 0.3mm solid $INK; padding-top: 0.8mm; color: $MUTED;
        font-size: 8.5pt; }
      footer { margin-top: 3mm; color: $MUTED; font-size: 8.5pt; break-inside: avoid; }
      @media print {
        html { background: $PAPER; }
        body { padding: 0; max-width: none; }
        * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
      }
      """;

  private PageStyle() {}

  /** The sheet with its colours filled in. */
  static String sheet() {
    return coloured(SHEET);
  }

  /** Any sheet with the colours of a page filled in, each a dollar sign and its name. */
  static String coloured(String sheet) {
    String filled = sheet;
    for (PageColour colour : PageColour.values()) {
      filled = coloured(filled, colour.name(), colour.hex());
    }
    return filled;
  }

  /** A sheet with one colour filled in. */
  static String coloured(String sheet, String name, String hex) {
    return sheet.replaceAll("\\$" + name + "(?![A-Z_])", hex);
  }
}
