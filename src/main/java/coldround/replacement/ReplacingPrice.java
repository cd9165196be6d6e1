package coldround.replacement;

import coldround.fleet.Unit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.scoring.Assessment;
import coldround.upkeep.Cost;
import coldround.upkeep.Costs;
import coldround.upkeep.RunningCost;
import java.util.Optional;

/**
 * Puts a price on replacing a unit: its own of the equipment list, else that of its kind and size.
 */
final class ReplacingPrice {

  private static final double KG_PER_LB = Measure.POUND.toBase(1);

  private ReplacingPrice() {}

  /**
   * @throws NoPrice when neither is there
   */
  static ReplacingCost of(Economics economics, Assessment assessment, RunningCost running) {
    Unit unit = assessment.history().unit();
    String place = assessment.history().site().jurisdiction();
    Costs costs = economics.costs();
    Optional<Quantity> own = unit.plate("replacement_cost");
    Cost table = own.isPresent() ? null : tablePrice(costs, unit, place);
    double size = own.isEmpty() && running.measured() ? size(running) : 1;
    double price =
        own.isPresent()
            ? inCurrency(costs, unit, own.get())
            : sized(table, size, economics.value(EconomicRate.SIZE_EXPONENT));
    Source source =
        own.isPresent()
            ? new Source("equipment list", unit.tag(), "replacement_cost of this unit")
            : table.source();
    double chargeLb = assessment.leak().chargeKg().orElse(0) / KG_PER_LB;
    return new ReplacingCost(
        price,
        own.isPresent(),
        size,
        costs.of("disposal", "*", place).amount(),
        chargeLb * costs.of("recovery", "*", place).amount(),
        costs.of("shutdown", "*").amount(),
        price * economics.value(EconomicRate.SURCHARGE),
        source);
  }

  private static double size(RunningCost running) {
    return running.kilowatts() / running.usualKilowatts();
  }

  /** Within the range of the row: beyond it the kind says little of the unit. */
  private static double sized(Cost table, double size, double exponent) {
    double price = table.amount() * Math.pow(size, exponent);
    double least = table.low() == null ? price : table.low().value();
    double most = table.high() == null ? price : table.high().value();
    return Math.max(least, Math.min(most, price));
  }

  private static double inCurrency(Costs costs, Unit unit, Quantity own) {
    if (!own.measure().equals(costs.currency())) {
      throw new NoPrice(
          unit.id(),
          unit.tag()
              + ": replacement_cost is in "
              + own.measure()
              + ", costs.csv in "
              + costs.currency());
    }
    return own.value();
  }

  private static Cost tablePrice(Costs costs, Unit unit, String place) {
    if (!costs.has("equipment", unit.kind())) {
      throw new NoPrice(
          unit.id(),
          unit.tag()
              + ": no replacement_cost in the equipment list and no equipment row for "
              + (unit.kind().isEmpty() ? "a unit of no kind" : unit.kind())
              + " in costs.csv");
    }
    return costs.of("equipment", unit.kind(), place);
  }
}
