package coldround.scoring;

import coldround.scoring.Cleanings.Cycle;
import coldround.scoring.statistics.Shrinkage;
import coldround.scoring.statistics.TheilSen;
import java.util.List;

/**
 * How fast the excess of a unit grows: what is usual in its surroundings, corrected by each of its
 * own cleaning cycles.
 */
final class FoulingRate {

  /**
   * From here on a cycle's slope is the robust one, so that one bad gauge reading cannot move it.
   */
  private static final int ROBUST = 5;

  // efficiency of the Theil-Sen slope against least squares, of the normal law
  private static final double THEIL_SEN_EFFICIENCY = 0.955;

  private final double readingSd;

  FoulingRate(Limits limits) {
    this.readingSd = limits.value(LimitName.READING_SD);
  }

  /** Mean not below 0: a coil does not clean itself. */
  Shrinkage of(Shrinkage prior, CleanSplit clean, List<Cycle> cycles) {
    Shrinkage rate = prior;
    for (Cycle cycle : cycles) {
      rate = with(rate, clean, cycle);
    }
    return new Shrinkage(Math.max(0, rate.mean()), rate.sd());
  }

  private Shrinkage with(Shrinkage rate, CleanSplit clean, Cycle cycle) {
    int count = cycle.used().size();
    if (count == 0) {
      return rate;
    }
    double[] days = new double[count];
    double[] excess = new double[count];
    for (int i = 0; i < count; i++) {
      days[i] = cycle.days(i);
      excess[i] = CleanSplits.splitK(cycle.used().get(i)) - clean.splitK();
    }
    if (count >= ROBUST) {
      return robust(rate, days, excess);
    }
    return cycle.cleaned() != null
        ? throughCleaning(rate, clean, days, excess)
        : leastSquares(rate, days, excess);
  }

  private Shrinkage robust(Shrinkage rate, double[] days, double[] excess) {
    double slope = TheilSen.slope(days, excess);
    if (Double.isNaN(slope)) {
      return rate;
    }
    // the readings' own scatter is not used: then a higher reading could count for less
    return rate.with(slope, readingSd / Math.sqrt(THEIL_SEN_EFFICIENCY * spread(days)));
  }

  private static double spread(double[] days) {
    double mean = 0;
    for (double day : days) {
      mean += day / days.length;
    }
    double spread = 0;
    for (double day : days) {
      spread += (day - mean) * (day - mean);
    }
    return spread;
  }

  /** Few readings since a cleaning: a line through no excess on its day. */
  private Shrinkage throughCleaning(
      Shrinkage rate, CleanSplit clean, double[] days, double[] excess) {
    double sum = 0;
    double squares = 0;
    double product = 0;
    for (int i = 0; i < days.length; i++) {
      sum += days[i];
      squares += days[i] * days[i];
      product += days[i] * excess[i];
    }
    if (squares == 0) {
      return rate;
    }
    double variance =
        (readingSd * readingSd * squares + clean.sdK() * clean.sdK() * sum * sum)
            / (squares * squares);
    return rate.with(product / squares, Math.sqrt(variance));
  }

  /** Few readings with no cleaning before them on record: only their own rise tells. */
  private Shrinkage leastSquares(Shrinkage rate, double[] days, double[] excess) {
    double spread = spread(days);
    if (spread == 0) {
      return rate;
    }
    double meanDay = 0;
    for (double day : days) {
      meanDay += day / days.length;
    }
    double product = 0;
    for (int i = 0; i < days.length; i++) {
      product += (days[i] - meanDay) * excess[i];
    }
    return rate.with(product / spread, readingSd / Math.sqrt(spread));
  }
}
