package coldround.replacement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Plays policies through many times. In each run every unit draws its rate of faults (gamma, from
 * its posterior), the number of faults of each year (Poisson), the year in which it dies (its
 * Weibull life) and the run draws how far prices lie from the tables (lognormal of mean one). All
 * policies meet the same draws.
 */
final class Simulation {

  private static final double LOW = 0.1;
  private static final double HIGH = 0.9;

  private final List<UnitOutlook> units;
  private final PlanOrder order;
  private final Terms terms;
  private final double priceSpread;
  private final double faultSpread;
  private final List<Course> courses = new ArrayList<>();

  Simulation(List<UnitOutlook> units, PlanOrder order, Economics economics) {
    this(
        units,
        order,
        economics.value(EconomicRate.PRICE_SPREAD),
        economics.value(EconomicRate.FAULT_COST_SPREAD));
  }

  Simulation(List<UnitOutlook> units, PlanOrder order, double priceSpread, double faultSpread) {
    this.units = units;
    this.order = order;
    this.terms = order.terms();
    this.priceSpread = priceSpread;
    this.faultSpread = faultSpread;
    units.forEach(unit -> courses.add(new Course(unit, terms)));
  }

  List<Policy.Outcome> compare(List<Policy> policies) {
    List<Tally> tallies = new ArrayList<>();
    policies.forEach(policy -> tallies.add(new Tally(policy, order.runs())));
    for (int run = 0; run < order.runs(); run++) {
      Chance ofRun = new Chance(order.seed(), run, -1);
      double prices = ofRun.lognormal(priceSpread);
      double faults = ofRun.lognormal(faultSpread);
      List<Course.Draw> draws = new ArrayList<>(units.size());
      for (int u = 0; u < units.size(); u++) {
        Chance chance = new Chance(order.seed(), run, u);
        draws.add(courses.get(u).draw(chance, prices, faults));
      }
      for (int p = 0; p < policies.size(); p++) {
        tallies.get(p).play(draws, run);
      }
    }
    List<Policy.Outcome> outcomes = new ArrayList<>();
    tallies.forEach(tally -> outcomes.add(tally.outcome()));
    return outcomes;
  }

  /** What the runs of one policy came to. */
  private final class Tally {
    private final Policy policy;
    private final List<SharedShutdowns.Group> shared;
    private final double[] today;
    private final double[][] spend;
    private final double[][] capital;

    Tally(Policy policy, int runs) {
      this.policy = policy;
      shared = SharedShutdowns.of(units, policy.years(), terms.horizon());
      today = new double[runs];
      spend = new double[runs][terms.horizon()];
      capital = new double[runs][terms.horizon()];
    }

    void play(List<Course.Draw> draws, int run) {
      for (int u = 0; u < draws.size(); u++) {
        int year = policy.years()[u];
        today[run] += courses.get(u).play(year, draws.get(u), spend[run], capital[run]);
      }
      shared.forEach(group -> share(group, draws, run));
      for (int year = 0; year < terms.horizon(); year++) {
        spend[run][year] *= terms.told(year);
        capital[run][year] *= terms.told(year);
      }
    }

    private void share(SharedShutdowns.Group group, List<Course.Draw> draws, int run) {
      int year = group.year();
      long living = group.units().stream().filter(u -> draws.get(u).diesIn() >= year).count();
      if (living > 1) {
        int first = group.units().get(0);
        double one = units.get(first).replacing().shutdown() * draws.get(first).prices();
        double saved = (living - 1) * one;
        spend[run][year] -= saved;
        capital[run][year] -= saved;
        today[run] -= saved * terms.discount().spv(year);
      }
    }

    Policy.Outcome outcome() {
      double mean = Arrays.stream(today).average().orElse(0);
      double squares = Arrays.stream(today).map(x -> (x - mean) * (x - mean)).sum();
      double error = Math.sqrt(squares / (today.length - 1) / today.length);
      double[] over = new double[terms.horizon()];
      return new Policy.Outcome(
          policy,
          Expected.of(units, policy.years(), terms),
          mean,
          error,
          average(),
          quantile(LOW),
          quantile(0.5),
          quantile(HIGH),
          over,
          over(over));
    }

    private double[] average() {
      double[] mean = new double[terms.horizon()];
      for (double[] run : spend) {
        for (int year = 0; year < mean.length; year++) {
          mean[year] += run[year] / spend.length;
        }
      }
      return mean;
    }

    private double[] quantile(double share) {
      double[] values = new double[terms.horizon()];
      for (int year = 0; year < values.length; year++) {
        int at = year;
        double[] sorted = Arrays.stream(spend).mapToDouble(run -> run[at]).sorted().toArray();
        values[year] = sorted[(int) Math.round(share * (sorted.length - 1))];
      }
      return values;
    }

    /** Chance of any year; those of each year are written to the array. */
    private double over(double[] inYear) {
      int any = 0;
      for (double[] run : capital) {
        boolean exceeded = false;
        double left = 0;
        for (int year = 0; year < run.length; year++) {
          double room = order.limits()[year] + order.carryOver() * left;
          boolean over = run[year] > room;
          inYear[year] += over ? 1.0 / capital.length : 0;
          exceeded |= over;
          left = Double.isInfinite(room) ? 0 : Math.max(0, room - run[year]);
        }
        any += exceeded ? 1 : 0;
      }
      return (double) any / capital.length;
    }
  }
}
