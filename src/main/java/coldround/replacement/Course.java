package coldround.replacement;

/** How one unit and what follows it may fare over the plan. */
final class Course {

  /**
   * What chance had in store for it.
   *
   * @param diesIn year in which the unit of today dies; the horizon when it lives on
   * @param level of its faults against what is expected
   * @param newLevel the same of the units that follow
   * @param uniform one number for the faults of each year
   * @param prices factor on what new units cost
   * @param faultCost factor on what a fault costs
   */
  record Draw(
      int diesIn,
      double level,
      double newLevel,
      double[] uniform,
      double prices,
      double faultCost) {}

  private final UnitOutlook unit;
  private final Discount discount;
  private final int horizon;
  private final int[][] lives;

  Course(UnitOutlook unit, Terms terms) {
    this.unit = unit;
    this.discount = terms.discount();
    this.horizon = terms.horizon();
    Successors next = unit.successors(discount);
    lives = new int[horizon + 1][];
    for (int year = 0; year <= horizon; year++) {
      lives[year] = next.livesFrom(year).stream().mapToInt(life -> life).toArray();
    }
  }

  Draw draw(Chance chance, double prices, double faultCost) {
    int dies = horizon;
    for (int year = horizon - 1; year >= 0; year--) {
      dies = chance.uniform() < unit.dying()[year] ? year : dies;
    }
    double level = chance.gamma(unit.faultRate().shape()) / unit.faultRate().shape();
    double newLevel = chance.gamma(unit.newFaultRate().shape()) / unit.newFaultRate().shape();
    double[] uniform = new double[horizon];
    for (int year = 0; year < horizon; year++) {
      uniform[year] = chance.uniform();
    }
    return new Draw(dies, level, newLevel, uniform, prices, faultCost);
  }

  /**
   * Adds what it spends to the years.
   *
   * @param planned year of its replacement; the horizon for none
   * @return worth of all that today
   */
  double play(int planned, Draw draw, double[] spend, double[] capital) {
    boolean dead = draw.diesIn < planned;
    int bought = dead ? draw.diesIn + 1 : planned;
    double today = 0;
    for (int year = 0; year < bought; year++) {
      double running = cost(unit.keeping().get(year), draw.level, draw, year);
      spend[year] += running;
      today += running * discount.spv(year + 1);
    }
    if (dead) {
      double surcharge = unit.replacing().surcharge() * draw.prices;
      today += surcharge * discount.spv(bought);
      if (bought < horizon) {
        spend[bought] += surcharge;
        capital[bought] += surcharge;
      }
    }
    return today + follow(bought, draw, spend, capital);
  }

  private double follow(int from, Draw draw, double[] spend, double[] capital) {
    double today = 0;
    int start = from;
    int life = 0;
    for (int next : lives[from]) {
      life = next;
      double price = (unit.prices()[start] + unit.replacing().shutdown()) * draw.prices;
      spend[start] += price;
      capital[start] += price;
      today += price * discount.spv(start);
      for (int age = 0; age < life; age++) {
        double running = cost(unit.running().get(age), draw.newLevel, draw, start + age);
        spend[start + age] += running;
        today += running * discount.spv(start + age + 1);
      }
      start += life;
    }
    if (life > 0) {
      double left = unit.residual()[life - 1] * draw.prices;
      today -= left * discount.spv(horizon);
    }
    return today;
  }

  private static double cost(YearCost expected, double level, Draw draw, int year) {
    double others = expected.total() - expected.ofFaults();
    if (expected.faults() <= 0) {
      return others;
    }
    int faults = Chance.poisson(expected.faults() * level, draw.uniform[year]);
    return others + faults * expected.ofFaults() / expected.faults() * draw.faultCost;
  }
}
