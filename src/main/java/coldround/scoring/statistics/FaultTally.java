package coldround.scoring.statistics;

import java.util.Optional;

/**
 * What the fault records of many units boil down to for estimating how rates differ between them.
 * Whole numbers only, so the sum is the same in any order, batch or number of threads.
 *
 * @param units with a record
 * @param faults of all
 * @param days under observation, of all
 * @param faultsSquared sum of squares of each unit's faults
 * @param faultDays sum of faults × days of each unit
 * @param daysSquared sum of squares of each unit's days
 */
public record FaultTally(
    long units, long faults, long days, long faultsSquared, long faultDays, long daysSquared) {

  public static final FaultTally NONE = new FaultTally(0, 0, 0, 0, 0, 0);

  public static final double DAYS_A_YEAR = 365.25;

  /** One unit. */
  public static FaultTally of(int faults, long days) {
    return new FaultTally(
        1, faults, days, (long) faults * faults, Math.multiplyExact(faults, days), days * days);
  }

  public FaultTally plus(FaultTally other) {
    return new FaultTally(
        units + other.units,
        faults + other.faults,
        days + other.days,
        faultsSquared + other.faultsSquared,
        faultDays + other.faultDays,
        daysSquared + other.daysSquared);
  }

  /** So many units of the same record. */
  public FaultTally times(long count) {
    return new FaultTally(
        units * count,
        faults * count,
        days * count,
        faultsSquared * count,
        faultDays * count,
        daysSquared * count);
  }

  /** Rate a year of all together; 0 without any time of observation. */
  public double meanRate() {
    return days == 0 ? 0 : faults * DAYS_A_YEAR / days;
  }

  /**
   * Prior by the method of moments: what the counts scatter beyond Poisson is scatter of the rates.
   *
   * @param leastYears least and
   * @param mostYears greatest weight of the prior; the greatest also stands for no scatter at all
   * @return empty when there is nothing to estimate from
   */
  public Optional<GammaPoisson> prior(double leastYears, double mostYears) {
    if (faults == 0 || days == 0) {
      return Optional.empty();
    }
    double rate = (double) faults / days;
    double scatter = faultsSquared - 2 * rate * faultDays + rate * rate * daysSquared;
    double variance = (scatter - faults) / daysSquared;
    double years = variance > 0 ? rate / variance / DAYS_A_YEAR : mostYears;
    double weight = Math.min(mostYears, Math.max(leastYears, years));
    return Optional.of(new GammaPoisson(meanRate() * weight, weight));
  }
}
