package coldround.fleet;

import coldround.fleet.SuspectLimits.Limit;
import coldround.quantity.Quantity;
import coldround.refrigerant.Refrigerants;
import coldround.table.RuleTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Marks the readings of a visit that cannot be, with the slip that they most likely are: a unit of
 * measure or a decimal point. They are kept, and left out of every computation until confirmed.
 */
public final class Plausibility {

  /** The nameplate value that a reading is compared with. */
  private static final Map<String, String> PLATE =
      Map.of(
          "compressor", "compressor_rated",
          "condenser_fan", "condenser_fan_rated",
          "evaporator_fan", "evaporator_fan_rated",
          "voltage_l1_l2", "supply",
          "voltage_l2_l3", "supply",
          "voltage_l1_l3", "supply",
          "refrigerant_added", "charge",
          "refrigerant_recovered", "charge");

  private final SuspectLimits limits;
  private final Refrigerants refrigerants;

  private Plausibility(SuspectLimits limits, Refrigerants refrigerants) {
    this.limits = limits;
    this.refrigerants = refrigerants;
  }

  /** Reads scoring/suspect-readings.csv; what is wrong with it becomes problems of the tables. */
  public static Plausibility load(RuleTables tables, Refrigerants refrigerants) {
    return new Plausibility(SuspectLimits.read(tables), refrigerants);
  }

  /**
   * The visit with each of its readings marked or cleared. Readings that were confirmed are
   * believed.
   *
   * @param atmosphereKpa air pressure of the place, which gauge readings are over
   */
  public Visit checked(Visit visit, Unit unit, double atmosphereKpa) {
    if (visit.readings().isEmpty()) {
      return visit;
    }
    List<Reading> readings = new ArrayList<>();
    visit.readings().forEach(reading -> readings.add(alone(reading, unit)));
    refrigerants
        .curve(unit.refrigerant())
        .map(curve -> new PressureCheck(curve, limits, atmosphereKpa))
        .ifPresent(pressures -> pressures.mark(readings));
    return readings.equals(visit.readings()) ? visit : visit.with(readings);
  }

  /** By its own limits and the nameplate. */
  private Reading alone(Reading reading, Unit unit) {
    if (reading.value() == null || reading.confirmed()) {
      return reading;
    }
    String column = PLATE.get(reading.quantity());
    Limit limit = limits.find(column == null ? reading.quantity() : column);
    if (limit == null) {
      return reading.doubted("");
    }
    return reading.doubted(
        column == null
            ? bounded(reading.value(), limit)
            : plate(reading.value(), unit.plate(column).orElse(null), limit));
  }

  private static String bounded(Quantity value, Limit limit) {
    return limit.holds(value.base())
        ? ""
        : "%s is not believed; %s would be.%s"
            .formatted(
                value,
                limit.told(),
                Slip.told(value, other -> limit.holds(other.base()), other -> 0));
  }

  private static String plate(Quantity value, Quantity rated, Limit limit) {
    if (rated == null || rated.base() <= 0 || value.base() == 0) {
      return "";
    }
    Predicate<Quantity> fits = other -> limit.holds(share(other, rated));
    return fits.test(value)
        ? ""
        : "%s is %.0f %% of the %s on the nameplate; %s would be believed.%s"
            .formatted(
                value,
                share(value, rated),
                rated,
                limit.told(),
                Slip.told(value, fits, other -> Math.abs(Math.log(share(other, rated) / 100))));
  }

  private static double share(Quantity value, Quantity rated) {
    return 100 * value.base() / rated.base();
  }
}
