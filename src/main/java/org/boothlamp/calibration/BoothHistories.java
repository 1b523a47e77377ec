package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Calibrations of any number of booths. Immutable.
 *
 * @param all of every booth, each with a number that no other one has
 * @param ofBooth those that a booth measures by, by its id; of one booth alone under the empty id
 */
public record BoothHistories(CalibrationHistory all, Map<String, CalibrationHistory> ofBooth) {

  /** The id under which the calibrations of one booth alone are found. */
  public static final String ALONE = "";

  /**
   * What one log of a booth holds. A booth that gets a new card begins a new log, and measures by
   * the calibrations in that one.
   *
   * @param booth id of its booth
   * @param startedWallMillis when a monitor last began with it, ms since the epoch
   * @param history its calibrations
   */
  public record OneLog(String booth, long startedWallMillis, CalibrationHistory history) {}

  public BoothHistories {
    ofBooth = Collections.unmodifiableMap(new TreeMap<>(ofBooth));
  }

  /** Those of one booth, in its own log. */
  public static BoothHistories alone(CalibrationHistory history) {
    return new BoothHistories(history, Map.of(ALONE, history));
  }

  /** Those of several logs; the latest log of a booth counts. */
  public static BoothHistories of(List<OneLog> logs) {
    List<OneLog> byTime = new ArrayList<>(logs);
    byTime.sort(Comparator.comparingLong(OneLog::startedWallMillis));
    Map<String, CalibrationHistory> latest = new TreeMap<>();
    byTime.forEach(log -> latest.put(log.booth(), log.history()));
    return new BoothHistories(all(logs), latest.size() > 1 ? latest : alone(latest));
  }

  private static Map<String, CalibrationHistory> alone(Map<String, CalibrationHistory> latest) {
    return Map.of(ALONE, latest.values().stream().findFirst().orElse(CalibrationHistory.NONE));
  }

  private static CalibrationHistory all(List<OneLog> logs) {
    return new CalibrationHistory(
        logs.stream()
            .flatMap(log -> log.history().records().stream())
            .sorted(Comparator.comparingLong(CalibrationRecord::number))
            .toList());
  }

  /** Whether they are of more than one booth. */
  public boolean isOfSeveralBooths() {
    return ofBooth.size() > 1;
  }
}
