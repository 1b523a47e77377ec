package org.boothlamp.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Gathers runs and touches by trainee and pass. Confined to one thread. */
final class ClassAdder {

  /** By code, nobody last. */
  private static final Comparator<String> NOBODY_LAST =
      Comparator.comparing(String::isEmpty).thenComparing(Comparator.naturalOrder());

  private final Map<String, TraineeAdder> trainees = new TreeMap<>(NOBODY_LAST);
  private final Figures.Adder total = new Figures.Adder();

  void add(ShiftRecords records) {
    records.runs().forEach(this::add);
    records.touches().forEach(this::add);
  }

  private void add(RunRecord run) {
    total.add(run);
    trainee(run.trainee()).add(run);
  }

  private void add(TouchRecord touch) {
    trainee(touch.trainee()).add(touch);
  }

  private TraineeAdder trainee(String code) {
    return trainees.computeIfAbsent(code, TraineeAdder::new);
  }

  List<TraineeSummary> summaries() {
    return trainees.values().stream().map(TraineeAdder::summary).toList();
  }

  Figures total() {
    return total.figuresOfDifferentPasses();
  }

  private static final class TraineeAdder {

    private final String code;
    private final Map<PassKey, Figures.Adder> passes = new LinkedHashMap<>();
    private final Figures.Adder total = new Figures.Adder();
    private PassKey lastPass;
    private Figures.Adder lastAdder;
    private int touches;
    private int stuck;

    TraineeAdder(String code) {
      this.code = code;
    }

    void add(RunRecord run) {
      total.add(run);
      if (lastPass == null || !lastPass.isOf(run)) {
        lastPass = PassKey.of(run);
        lastAdder = passes.computeIfAbsent(lastPass, key -> new Figures.Adder());
      }
      lastAdder.add(run);
    }

    void add(TouchRecord touch) {
      touches++;
      if (touch.stuck()) {
        stuck++;
      }
    }

    TraineeSummary summary() {
      List<PassSummary> rows = new ArrayList<>(passes.size());
      passes.forEach((key, adder) -> rows.add(new PassSummary(key, adder.figures())));
      Figures all = rows.size() > 1 ? total.figuresOfDifferentPasses() : total.figures();
      return new TraineeSummary(code, rows, all, touches, stuck);
    }
  }
}
