package coldround.replacement;

import coldround.fleet.Unit;
import coldround.quantity.Measure;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.Assessment;
import coldround.upkeep.Cost;
import coldround.upkeep.Costs;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What lost refrigerant costs a unit, year by year.
 *
 * @param kgPerYear lost
 * @param measured true when the leak rate is this unit's own
 * @param price of a pound today
 * @param perYear cost in each year of the plan, with the price rising as supply falls
 * @param supply share of the baseline in each year
 */
record GasCost(double kgPerYear, boolean measured, Cost price, double[] perYear, double[] supply) {

  private static final double KG_PER_LB = Measure.POUND.toBase(1);
  private static final double ALL = 100;

  static GasCost of(
      Economics economics, RefrigerantRules gases, Assessment assessment, Terms terms) {
    Costs costs = economics.costs();
    Unit unit = assessment.history().unit();
    String place = assessment.history().site().jurisdiction();
    // no addition on record is no proof of a tight unit
    boolean measured =
        !assessment.leak().additions().isEmpty()
            && assessment.leak().rollingPercentPerYear().isPresent();
    double percent =
        measured
            ? assessment.leak().rollingPercentPerYear().getAsDouble()
            : usualPercent(costs, unit.kind(), place);
    double kg = assessment.leak().chargeKg().orElse(0) * Math.min(ALL, percent) / 100;
    String gas = assessment.supply().refrigerant();
    Cost price = costs.of("refrigerant", gas.isEmpty() ? "*" : gas, place);
    double[] supply = supply(gases, gas, unit, place, terms);
    double now = share(gases, gas, unit, place, terms.asOf(), terms.asOf());
    double[] perYear = new double[terms.horizon()];
    for (int year = 0; year < perYear.length; year++) {
      double dearer = dearer(economics, now, supply[year]);
      perYear[year] = kg / KG_PER_LB * price.amount() * dearer;
    }
    return new GasCost(kg, measured, price, perYear, supply);
  }

  /** For a kind without a row, none is lost. */
  static double usualPercent(Costs costs, String kind, String place) {
    return costs.has("leakage", kind) ? costs.of("leakage", kind, place).amount() : 0;
  }

  private static double dearer(Economics economics, double now, double then) {
    double least = economics.value(EconomicRate.GAS_SUPPLY_LEAST);
    double fall = Math.max(least, now) / Math.max(least, then);
    return Math.pow(Math.max(1, fall), economics.value(EconomicRate.GAS_SCARCITY));
  }

  private static double[] supply(
      RefrigerantRules gases, String gas, Unit unit, String place, Terms terms) {
    double[] supply = new double[terms.horizon()];
    for (int year = 0; year < supply.length; year++) {
      LocalDate from = LocalDate.of(terms.firstYear() + year, 1, 1);
      supply[year] = share(gases, gas, unit, place, from, from.plusYears(1));
    }
    return supply;
  }

  private static double share(
      RefrigerantRules gases, String gas, Unit unit, String place, LocalDate from, LocalDate to) {
    Optional<Refrigerant> known = gases.refrigerants().find(gas);
    return known
        .map(it -> gases.law().supply(it, place, from, to, true, unit.kind()).share())
        .orElse(1.0);
  }
}
