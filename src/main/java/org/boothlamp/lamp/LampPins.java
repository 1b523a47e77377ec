package org.boothlamp.lamp;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;

/**
 * The pins a lamp hangs on, by the numbers of the chip that drives them (BCM), not by their place
 * on the connector. Immutable.
 *
 * @param red pin of the red light
 * @param amber pin of the amber light
 * @param green pin of the green light
 * @param heartbeat pin for a watchdog outside, or empty; it toggles while the lamp is driven
 * @param active level that lights a light
 */
public record LampPins(int red, int amber, int green, OptionalInt heartbeat, ActiveLevel active) {

  /** Refuses a negative pin, and one pin for two purposes. */
  public LampPins {
    List<Integer> all = new ArrayList<>(List.of(red, amber, green));
    heartbeat.ifPresent(all::add);
    if (all.stream().anyMatch(pin -> pin < 0)) {
      throw new IllegalArgumentException(
          "a pin must be >= 0: " + words(red, amber, green, heartbeat));
    }
    if (new HashSet<>(all).size() < all.size()) {
      throw new IllegalArgumentException(
          "each light needs a pin of its own: " + words(red, amber, green, heartbeat));
    }
  }

  private static String words(int red, int amber, int green, OptionalInt heartbeat) {
    String lights = "red=" + red + ", amber=" + amber + ", green=" + green;
    return heartbeat.isPresent() ? lights + ", heartbeat=" + heartbeat.getAsInt() : lights;
  }

  @Override
  public String toString() {
    return words(red, amber, green, heartbeat);
  }
}
