package org.boothlamp.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the monitor made of a recording. Immutable.
 *
 * @param recording its name
 * @param lengthSeconds its length
 * @param procedureId procedure it was judged by, or empty
 * @param pass pass name, or empty
 * @param records segments, touches and events, timed by their {@code startSeconds}
 */
public record Replay(
    String recording, double lengthSeconds, String procedureId, String pass, ShiftRecords records) {

  /** All segments together. */
  Figures total() {
    Figures.Adder adder = new Figures.Adder();
    records.runs().forEach(adder::add);
    return adder.figures();
  }

  /** Events in which the lamp was in fault. */
  List<EventRecord> faults() {
    return records.events().stream().filter(EventRecord::fault).toList();
  }

  /** Events that are no faults. */
  List<EventRecord> otherEvents() {
    return records.events().stream().filter(event -> !event.fault()).toList();
  }

  /**
   * Tells segments, touches and faults in order of their starts; at the same start a fault comes
   * first and a segment before a touch.
   *
   * @throws E what the teller throws
   */
  <E extends Exception> void tell(Teller<E> teller) throws E {
    List<Moment<E>> moments = new ArrayList<>();
    Spells wrongPolarity = Spells.of(ShiftReport.WRONG_POLARITY, records.events());
    for (EventRecord fault : faults()) {
      moments.add(new Moment<>(fault.startSeconds(), () -> teller.fault(fault)));
    }
    for (RunRecord run : records.runs()) {
      RunSummary summary = RunSummary.of(run, wrongPolarity, true);
      moments.add(new Moment<>(run.startSeconds(), () -> teller.segment(summary)));
    }
    for (TouchRecord touch : records.touches()) {
      moments.add(new Moment<>(touch.startSeconds(), () -> teller.touch(touch)));
    }
    moments.sort(Comparator.comparingDouble(Moment::startSeconds));
    for (Moment<E> moment : moments) {
      moment.telling().run();
    }
  }

  /** Who is told of a replay, one thing after the other. */
  interface Teller<E extends Exception> {

    void segment(RunSummary summary) throws E;

    void touch(TouchRecord touch) throws E;

    void fault(EventRecord fault) throws E;
  }

  private interface Telling<E extends Exception> {
    void run() throws E;
  }

  private record Moment<E extends Exception>(double startSeconds, Telling<E> telling) {}
}
