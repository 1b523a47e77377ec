package org.boothlamp.technique;

/**
 * What a school has found out for its own wire and rod. Immutable.
 *
 * @param burnOff from two runs at measured distances, or null for the table's
 * @param arcLength from two arcs of measured length, or null: then there are no millimetres
 */
public record SchoolScales(BurnOff burnOff, ArcLengthScale arcLength) {

  /** Nothing calibrated. */
  public static final SchoolScales NONE = new SchoolScales(null, null);
}
