package coldround.replacement;

import coldround.reason.Reason;
import coldround.scoring.Assessment;
import coldround.scoring.statistics.GammaPoisson;
import java.util.List;

/**
 * What lies ahead of one unit, with and without replacing it; in money of today.
 *
 * @param ageYears at the start of the plan, as computed with
 * @param keeping each year of the horizon with the unit of today
 * @param dying chance that it dies in each year, for one that began it
 * @param running each year of use of a new one
 * @param prices what replacing costs at the start of each year, without the site's shutdown
 * @param residual worth of a new one after each year of use, at the horizon
 * @param replacing what replacing costs today, in its parts
 * @param faultRate what is known of the rate of faults of the unit of today
 * @param newFaultRate the same of a new one
 * @param reasons what the figures rest on
 */
public record UnitOutlook(
    Assessment assessment,
    double ageYears,
    List<YearCost> keeping,
    double[] dying,
    List<YearCost> running,
    double[] prices,
    double[] residual,
    ReplacingCost replacing,
    GammaPoisson faultRate,
    GammaPoisson newFaultRate,
    List<Reason> reasons) {

  public UnitOutlook {
    keeping = List.copyOf(keeping);
    running = List.copyOf(running);
    reasons = List.copyOf(reasons);
  }

  public String id() {
    return assessment.history().unit().id();
  }

  public String tag() {
    return assessment.history().unit().tag();
  }

  /** Site and tag, as tags repeat from site to site. */
  public String place() {
    return site() + " " + tag();
  }

  public String customer() {
    return assessment.history().unit().customer();
  }

  public String site() {
    return assessment.history().unit().site();
  }

  public int horizon() {
    return keeping.size();
  }

  /** Sites of one customer have codes of their own only within it. */
  String siteKey() {
    return customer() + "\u001f" + site();
  }

  /** Chance that the unit of today is there at the start of that year. */
  double aliveAt(int year) {
    double alive = 1;
    for (int before = 0; before < year; before++) {
      alive *= 1 - dying[before];
    }
    return alive;
  }

  double[] keepingTotals() {
    return keeping.stream().mapToDouble(YearCost::total).toArray();
  }

  double[] runningTotals() {
    return running.stream().mapToDouble(YearCost::total).toArray();
  }

  /** What comes after the unit of today, each new one with a shutdown of its own. */
  public Successors successors(Discount discount) {
    double[] alone = prices.clone();
    for (int year = 0; year < alone.length; year++) {
      alone[year] += replacing.shutdown();
    }
    return Successors.of(alone, runningTotals(), new double[running.size()], residual, discount);
  }

  /** When it is best replaced, by itself: nobody shares its shutdown. */
  public BestYear bestYear(Discount discount) {
    return BestYear.of(
        keepingTotals(),
        dying,
        new double[horizon() + 1],
        replacing.surcharge(),
        successors(discount),
        discount);
  }

  /** The same unit with parts of its costs multiplied, to see what the answer depends on. */
  UnitOutlook times(double price, double faults, double gas, double energy) {
    double[] otherPrices = prices.clone();
    for (int year = 0; year < prices.length; year++) {
      otherPrices[year] += (price - 1) * replacing.price() * prices[year] / replacing.unitOnly();
    }
    double[] otherResidual = residual.clone();
    for (int age = 0; age < residual.length; age++) {
      otherResidual[age] *= price;
    }
    return new UnitOutlook(
        assessment,
        ageYears,
        keeping.stream().map(year -> year.times(faults, gas, energy)).toList(),
        dying,
        running.stream().map(year -> year.times(faults, gas, energy)).toList(),
        otherPrices,
        otherResidual,
        replacing.times(price),
        faultRate,
        newFaultRate,
        reasons);
  }
}
