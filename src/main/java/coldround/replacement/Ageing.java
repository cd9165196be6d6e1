package coldround.replacement;

import coldround.scoring.statistics.WeibullLife;

/**
 * How faults grow with age: one share of them comes at any age, the other as the hazard of the
 * class's Weibull life does, against a reference age and up to a cap.
 */
final class Ageing {

  private final WeibullLife life;
  private final double share;
  private final double cap;
  private final double referenceYears;

  Ageing(WeibullLife life, Economics economics) {
    this(
        life,
        economics.value(EconomicRate.AGEING_SHARE),
        economics.value(EconomicRate.AGEING_CAP),
        economics.value(EconomicRate.AGEING_REFERENCE));
  }

  Ageing(WeibullLife life, double share, double cap, double referenceShare) {
    this.life = life;
    this.share = share;
    this.cap = cap;
    this.referenceYears = referenceShare * life.medianYears();
  }

  /** Faults in the year after that age, against those at the reference age. */
  double level(double ageYears) {
    double ratio = Math.pow((Math.max(0, ageYears) + 0.5) / referenceYears, life.shape() - 1);
    return 1 - share + share * Math.min(cap, ratio);
  }

  /** By how much faults have grown from one age to another. */
  double growth(double fromYears, double toYears) {
    return level(toYears) / level(fromYears);
  }
}
