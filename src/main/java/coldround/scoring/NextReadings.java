package coldround.scoring;

import coldround.fleet.UnitHistory;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.scoring.statistics.FaultTally;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Which single reading would narrow the range of a score most. Each is tried: the unit is scored
 * again as if that one thing were on record too, at the value expected of it now.
 */
public final class NextReadings {

  private static final Comparator<NextReading> MOST_FIRST =
      Comparator.comparing(NextReading::narrowsBy).reversed().thenComparing(NextReading::evidence);
  private static final String NARROWS =
      ": the score is then known within {range} points, {less} fewer";

  private final Scoring scoring;
  private final ScoringRules rules;
  private final Refrigerants refrigerants;

  public NextReadings(Scoring scoring, ScoringRules rules, Refrigerants refrigerants) {
    this.scoring = scoring;
    this.rules = rules;
    this.refrigerants = refrigerants;
  }

  /** The same under the scoring that assessed a unit, such as that of a past day. */
  public NextReadings under(Scoring other) {
    return new NextReadings(other, rules, refrigerants);
  }

  /**
   * Those that narrow the range, the best first.
   *
   * @param all everything on record of the unit
   * @param now its assessment
   */
  public List<NextReading> of(UnitHistory all, Assessment now) {
    Trial trial = new Trial(all, now, new SupposedEvidence(all, now, rules));
    trial.split();
    trial.grade();
    trial.installed();
    trial.refrigerant();
    trial.record();
    return trial.found.stream().sorted(MOST_FIRST).toList();
  }

  private static double width(Condition condition) {
    return FactorScore.tenths(condition.high() - condition.low());
  }

  /** What was tried for one unit. */
  private final class Trial {
    private final UnitHistory all;
    private final Assessment now;
    private final SupposedEvidence supposed;
    private final double width;
    private final List<NextReading> found = new ArrayList<>();

    Trial(UnitHistory all, Assessment now, SupposedEvidence supposed) {
      this.all = all;
      this.now = now;
      this.supposed = supposed;
      this.width = width(now.condition());
    }

    void split() {
      refrigerants
          .curve(now.supply().refrigerant())
          .flatMap(supposed::split)
          .ifPresent(
              visit ->
                  tried(
                      "condensing-split",
                      "Read head pressure and the air entering the condenser together, at {ambient} or"
                          + " warmer",
                      "ambient",
                      rules.limits().shown(LimitName.AMBIENT_LEAST),
                      rules.limits().source(LimitName.AMBIENT_LEAST),
                      widthOf(supposed.with(visit))));
    }

    void grade() {
      tried(
          "condenser-coil-grade",
          "Look at the condenser coil and grade it from {best} to the worst grade",
          "best",
          GradeShares.CLEAN,
          rules.limits().source(LimitName.EVIDENCE_VALID),
          widthOf(supposed.with(supposed.grade())));
    }

    void installed() {
      double age = now.age().ageYears().orElse(now.age().life().ageAt(now.age().lostShare()));
      LocalDate day = now.asOf().minusDays(Math.round(age * FaultTally.DAYS_A_YEAR));
      tried(
          "installed",
          "Enter the date of installation from nameplate or invoice; now reckoned with: {age}",
          "age",
          Facts.years(age),
          now.age().source(),
          widthOf(supposed.with(day)));
    }

    /** Which gas it is cannot be foreseen: the mean over all that have a curve. */
    void refrigerant() {
      if (!now.supply().refrigerant().isEmpty()) {
        return;
      }
      double sum = 0;
      int count = 0;
      for (Refrigerant gas : refrigerants.all()) {
        if (refrigerants.curve(gas.designation()).isPresent()) {
          sum += widthOf(supposed.with(gas));
          count++;
        }
      }
      tried(
          "refrigerant",
          "Read the refrigerant from the nameplate or a retrofit label; the mean over {count} of the"
              + " table",
          "count",
          count,
          rules.limits().source(LimitName.SUPPLY_UNKNOWN),
          count == 0 ? width : FactorScore.tenths(sum / count));
    }

    void record() {
      double days = rules.limits().value(LimitName.REPEAT_WINDOW);
      supposed
          .seenBefore(days)
          .ifPresent(
              visit ->
                  tried(
                      "fault-record",
                      "Bring in the visits and faults of the last {window}, from the customer's file or"
                          + " the contractor before",
                      "window",
                      rules.limits().shown(LimitName.REPEAT_WINDOW),
                      rules.limits().source(LimitName.REPEAT_WINDOW),
                      widthOf(supposed.with(visit))));
    }

    private double widthOf(UnitHistory history) {
      return width(scoring.assess(history, now.asOf()).condition());
    }

    private void tried(
        String evidence, String template, String name, Object fact, Source source, double then) {
      double less = FactorScore.tenths(width - then);
      if (less <= 0) {
        return;
      }
      Map<String, Object> facts =
          Facts.of(name, fact, "range", String.valueOf(then), "less", String.valueOf(less));
      found.add(
          new NextReading(
              evidence, new Reason(evidence, template + NARROWS, facts, source), then, less));
    }
  }
}
