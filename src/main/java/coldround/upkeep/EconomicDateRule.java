package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.scoring.CoilState;
import java.time.LocalDate;
import java.util.List;

/** Condenser cleaning by the day from which running dirty costs more than a cleaning. */
final class EconomicDateRule implements UpkeepRule {

  private static final String TEMPLATE =
      "Dirty since {dirtSince}, the coil would cost {perYear} more electricity if it were left for a"
          + " year; with {cleaning} for a cleaning the cheapest interval is {interval}, that is until"
          + " {date}";
  private static final double YEAR_DAYS = 365;

  @Override
  public List<Ask> asks(UnitCase unit) {
    CoilState coil = unit.coil();
    boolean dirtKnown = coil.splitKnown() || coil.lastCleaned().isPresent();
    if (!dirtKnown || coil.foulingKPerDay() <= 0) {
      return List.of();
    }
    RunningDirty dirty = unit.dirty();
    double perDaySquared = coil.foulingKPerDay() * dirty.costPerDayPerK();
    double cost = CleaningCost.of(unit);
    if (!(perDaySquared > 0 && cost > 0)) {
      return List.of();
    }
    double discount = unit.tables().costs().of("discount", "business").amount();
    double days = CleaningInterval.discountedDays(cost, perDaySquared, discount / 100);
    if (days > unit.tables().limits().value(UpkeepLimit.ECONOMIC_HORIZON)) {
      return List.of();
    }
    LocalDate date = DirtSince.day(unit).plusDays(Math.round(days));
    Reason reason = reason(unit, dirty, perDaySquared, cost, discount, days, date);
    return List.of(Ask.by(TaskCode.CONDENSER, date, reason));
  }

  private static Reason reason(
      UnitCase unit,
      RunningDirty dirty,
      double perDaySquared,
      double cost,
      double discount,
      double days,
      LocalDate date) {
    Costs costs = unit.tables().costs();
    return UnitCase.reason(
        "economic-date",
        TEMPLATE,
        dirty.penalty().source(),
        "dirtSince",
        DirtSince.day(unit),
        "perYear",
        costs.money(perDaySquared * YEAR_DAYS * YEAR_DAYS / 2),
        "cleaning",
        costs.money(cost),
        "interval",
        new Quantity(days, Measure.DAY),
        "undiscounted",
        new Quantity(CleaningInterval.days(cost, perDaySquared), Measure.DAY),
        "discount",
        new Quantity(discount, Measure.PERCENT_PER_YEAR),
        "fouling",
        new Quantity(unit.coil().foulingKPerDay(), Measure.DELTA_K_PER_DAY),
        "powerPerKelvin",
        new Quantity(100 * dirty.penalty().sharePerK(), Measure.PERCENT),
        "powerLike",
        dirty.penalty().like(),
        "kilowatts",
        new Quantity(dirty.kilowatts(), Measure.COUNT),
        "kilowattsFrom",
        dirty.measured() ? "amps and volts of the unit" : dirty.use().source().toString(),
        "runHours",
        new Quantity(dirty.use().runHours(), Measure.HOUR),
        "electricityPerKwh",
        String.valueOf(dirty.price().amount()),
        "electricityFrom",
        dirty.price().source().toString(),
        "date",
        date);
  }
}
