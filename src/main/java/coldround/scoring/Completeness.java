package coldround.scoring;

import coldround.scoring.AgeState.Basis;
import coldround.scoring.statistics.FaultTally;

/** How much of the evidence for a score is there, by weight of the factor it serves. */
final class Completeness {

  private final Weights weights;
  private final double recordYears;
  private final double validDays;

  Completeness(ScoringRules rules) {
    this.weights = rules.weights();
    this.recordYears = rules.limits().value(LimitName.RECORD_FULL) / FaultTally.DAYS_A_YEAR;
    this.validDays = rules.limits().value(LimitName.EVIDENCE_VALID);
  }

  /** From 0 to 1, in hundredths. */
  double of(
      Evidence evidence, AgeState age, SupplyState supply, CoilState coil, FaultState faults) {
    double points =
        weights.of(Weights.AGE) * age(age)
            + weights.of(Weights.REFRIGERANT) * refrigerant(supply)
            + weights.of(Weights.COIL) * coil(evidence, coil)
            + weights.of(Weights.REPEAT_FAULTS) * Math.min(1, faults.observedYears() / recordYears);
    return Math.round(points) / 100.0;
  }

  /** The date, or half of it: the year of the serial number, a first record. */
  private static double age(AgeState age) {
    return age.basis() == Basis.INSTALLED ? 1 : age.basis() == Basis.NONE ? 0 : 0.5;
  }

  /** Which gas, and whose law. */
  private static double refrigerant(SupplyState supply) {
    return supply.known() ? 1 : supply.refrigerant().isEmpty() ? 0 : 0.5;
  }

  /** A split and a grade, neither of them old. */
  private double coil(Evidence evidence, CoilState coil) {
    boolean split =
        coil.latestSplit().filter(s -> evidence.daysSince(s.date()) <= validDays).isPresent();
    boolean grade =
        coil.gradeDate().filter(day -> evidence.daysSince(day) <= validDays).isPresent();
    return (split ? 0.5 : 0) + (grade ? 0.5 : 0);
  }
}
