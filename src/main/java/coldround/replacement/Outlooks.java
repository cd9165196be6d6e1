package coldround.replacement;

import coldround.fleet.Unit;
import coldround.quantity.Measure;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.AgeState;
import coldround.scoring.Assessment;
import coldround.scoring.FaultState;
import coldround.scoring.statistics.GammaPoisson;
import coldround.scoring.statistics.WeibullLife;
import coldround.upkeep.Costs;
import coldround.upkeep.RunningCost;
import java.util.ArrayList;
import java.util.List;

/** Works out what lies ahead of a unit, from its assessment and the tables. */
public final class Outlooks {

  private static final double KG_PER_LB = Measure.POUND.toBase(1);

  private final Economics economics;
  private final RefrigerantRules gases;

  public Outlooks(Economics economics, RefrigerantRules gases) {
    this.economics = economics;
    this.gases = gases;
  }

  /**
   * @throws NoPrice when there is no price for its replacement
   */
  public UnitOutlook of(Assessment assessment, Terms terms) {
    RunningCost running = RunningCost.of(economics.upkeep(), assessment);
    ReplacingCost replacing = ReplacingPrice.of(economics, assessment, running);
    WeibullLife life = assessment.age().life();
    Ageing ageing = new Ageing(life, economics);
    double age = age(assessment);
    double first = age + terms.lead();
    FaultCost fault = FaultCost.of(economics, assessment);
    GasCost gas = GasCost.of(economics, gases, assessment, terms);
    List<YearCost> keeping = new ArrayList<>();
    double[] dying = new double[terms.horizon()];
    for (int year = 0; year < terms.horizon(); year++) {
      double faults =
          faults(assessment.faults(), terms.lead() + year)
              * growth(assessment, ageing, age, first + year);
      double energy = oldEnergy(running, assessment, first + year);
      keeping.add(year(faults, fault, gas.perYear()[year], energy, running.cleaning(), year));
      dying[year] = dies(life, first + year);
    }
    GammaPoisson fresh = usualFaults(assessment);
    return new UnitOutlook(
        assessment,
        first,
        keeping,
        dying,
        running(assessment, terms, ageing, fresh, running),
        prices(replacing, terms),
        residual(replacing, life, terms),
        replacing,
        assessment.faults().posterior(),
        fresh,
        new OutlookReasons(economics, assessment)
            .all(terms, first, keeping, dying, fault, gas, running, replacing));
  }

  /** Where nothing bounds the age, that which the usual rates of faults belong to. */
  private double age(Assessment assessment) {
    AgeState age = assessment.age();
    double reference = economics.value(EconomicRate.AGEING_REFERENCE) * age.life().medianYears();
    return age.ageYears().orElse(Math.max(age.leastYears(), reference));
  }

  /** The rate of a record was seen up to now; the usual rate is that of the reference age. */
  private static double growth(
      Assessment assessment, Ageing ageing, double nowYears, double thenYears) {
    return assessment.faults().known()
        ? ageing.growth(nowYears, thenYears)
        : ageing.level(thenYears);
  }

  /** What a trend adds fades; the usual rate of the unit stays. */
  private double faults(FaultState its, double yearsAhead) {
    double usual = its.posterior().mean();
    double left = Math.pow(economics.value(EconomicRate.TREND_PERSISTENCE), yearsAhead);
    return usual + (its.expectedNextYear() - usual) * left;
  }

  /** Published lives count units taken away for any reason, so not every end of one is a death. */
  private double dies(WeibullLife life, double age) {
    return Math.min(
        economics.value(EconomicRate.DEATH_MOST),
        economics.value(EconomicRate.DEATH_SHARE) * life.failsWithin(age, 1));
  }

  private YearCost year(
      double faults, FaultCost fault, double gas, double energy, double cleaning, int year) {
    double service = Math.pow(1 + economics.value(EconomicRate.SERVICE_GROWTH), year);
    double power = Math.pow(1 + escalation(), year);
    return new YearCost(
        faults,
        faults * fault.repair() * service,
        faults * fault.stock(),
        faults * fault.downtime(),
        gas,
        energy * power,
        economics.value(EconomicRate.CLEANINGS) * cleaning * service);
  }

  private double escalation() {
    Costs costs = economics.costs();
    return costs.has("escalation", "electricity")
        ? costs.of("escalation", "electricity").amount() / 100
        : 0;
  }

  /**
   * Above what a new clean unit would use: its age, its dirt, and the gain of a new one forgone.
   */
  private double oldEnergy(RunningCost running, Assessment assessment, double age) {
    double gain = economics.value(EconomicRate.EFFICIENCY_GAIN);
    double dirt = dirtK(assessment) * running.perYearPerK();
    return running.electricityPerYear() * (aged(age) + gain) + dirt;
  }

  /** Mean excess over a year with the usual number of cleanings. */
  static double dirtK(double foulingKPerDay, double cleanings) {
    return foulingKPerDay * 365 / cleanings / 2;
  }

  private double dirtK(Assessment assessment) {
    return dirtK(assessment.coil().foulingKPerDay(), economics.value(EconomicRate.CLEANINGS));
  }

  private double aged(double age) {
    return Math.min(
        economics.value(EconomicRate.ENERGY_AGEING_MOST),
        economics.value(EconomicRate.ENERGY_AGEING) * Math.max(0, age));
  }

  private GammaPoisson usualFaults(Assessment assessment) {
    return economics
        .usualFaults(assessment.history().unit().kind())
        .orElse(assessment.faults().posterior());
  }

  /** A new unit is as its class: usual faults, usual leaks, the dirt of the place. */
  private List<YearCost> running(
      Assessment assessment,
      Terms terms,
      Ageing ageing,
      GammaPoisson faultRate,
      RunningCost running) {
    Unit unit = assessment.history().unit();
    String place = assessment.history().site().jurisdiction();
    FaultCost fault = FaultCost.usual(economics, assessment);
    Costs costs = economics.costs();
    double gas =
        assessment.leak().chargeKg().orElse(0)
            / KG_PER_LB
            * GasCost.usualPercent(costs, unit.kind(), place)
            / 100
            * costs.of("refrigerant", "*", place).amount();
    double keep = 1 - economics.value(EconomicRate.EFFICIENCY_GAIN);
    double dirt = dirtK(assessment) * running.perYearPerK() * keep;
    List<YearCost> years = new ArrayList<>();
    for (int age = 0; age < terms.horizon(); age++) {
      double energy = running.electricityPerYear() * keep * aged(age) + dirt;
      double faults = faultRate.mean() * ageing.level(age);
      years.add(year(faults, fault, gas, energy, running.cleaning(), 0));
    }
    return years;
  }

  private double[] prices(ReplacingCost replacing, Terms terms) {
    double growth = 1 + economics.value(EconomicRate.EQUIPMENT_GROWTH);
    double[] prices = new double[terms.horizon()];
    for (int year = 0; year < prices.length; year++) {
      prices[year] = replacing.unitOnly() * Math.pow(growth, year);
    }
    return prices;
  }

  /** The unused share of the mean life, straight-line. */
  private double[] residual(ReplacingCost replacing, WeibullLife life, Terms terms) {
    double[] residual = new double[terms.horizon()];
    for (int age = 1; age <= residual.length; age++) {
      residual[age - 1] = replacing.price() * Math.max(0, 1 - age / life.meanYears());
    }
    return residual;
  }
}
