package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.util.List;

/**
 * Condenser cleaning by the first day within a year on which the margin between trip ambient and
 * the design ambient of the month is below its limit and a cleaning would help.
 */
final class TripMarginRule implements UpkeepRule {

  private static final String TEMPLATE =
      "With the split growing by {fouling}, the unit locks out at {tripAmbient} ambient on {date};"
          + " that is {margin} above the design ambient of {designAmbient} for that month, less"
          + " than the limit of {limit}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    TripState trip = unit.assessment().trip();
    if (trip.tripAmbientC().isEmpty() || trip.months().isEmpty() || trip.designSource().isEmpty()) {
      return List.of();
    }
    TripForecast forecast = TripForecast.of(unit);
    LocalDate date = forecast.runsOut();
    if (date == null) {
      return List.of();
    }
    return List.of(Ask.by(TaskCode.CONDENSER, date, reason(unit, forecast, date)));
  }

  private static Reason reason(UnitCase unit, TripForecast forecast, LocalDate date) {
    TripState trip = unit.assessment().trip();
    double tripC = forecast.tripAmbientC(date);
    double designC = forecast.designAmbientC(date);
    return UnitCase.reason(
        "trip-margin",
        TEMPLATE,
        trip.designSource().orElseThrow(),
        "fouling",
        new Quantity(unit.coil().foulingKPerDay(), Measure.DELTA_K_PER_DAY),
        "tripAmbient",
        new Quantity(tripC, Measure.DEG_C),
        "designAmbient",
        new Quantity(designC, Measure.DEG_C),
        "margin",
        new Quantity(tripC - designC, Measure.DELTA_K),
        "limit",
        new Quantity(trip.limitK(), Measure.DELTA_K),
        "cutOut",
        new Quantity(trip.cutOutC().orElseThrow(), Measure.DEG_C),
        "splitToday",
        new Quantity(unit.coil().splitK(), Measure.DELTA_K),
        "date",
        date);
  }
}
