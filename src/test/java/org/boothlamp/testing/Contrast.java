package org.boothlamp.testing;

/**
 * The contrast of two colours as WCAG 2.2 defines it (relative luminance, with the threshold
 * 0.04045 of sRGB; from memory).
 */
public final class Contrast {

  private Contrast() {}

  /** 1 to 21, whichever of the two is lighter. */
  public static double of(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String hex) {
    return 0.2126 * channel(hex, 1) + 0.7152 * channel(hex, 3) + 0.0722 * channel(hex, 5);
  }

  private static double channel(String hex, int start) {
    double share = Integer.parseInt(hex.substring(start, start + 2), 16) / 255.0;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
