package coldround.upkeep;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The limits of scoring/upkeep-limits.csv. */
final class UpkeepLimits {

  static final String FILE = "upkeep-limits.csv";

  private record Limit(UpkeepLimit name, Quantity value, Source source) {}

  private final Map<UpkeepLimit, Limit> byName = new EnumMap<>(UpkeepLimit.class);
  private final double[] values = new double[UpkeepLimit.values().length];

  private UpkeepLimits(List<Limit> limits) {
    for (Limit limit : limits) {
      byName.put(limit.name, limit);
      boolean plain = limit.name.dimension() == Dimension.COUNT;
      values[limit.name.ordinal()] = plain ? limit.value.value() : limit.value.base();
    }
  }

  static UpkeepLimits load(RuleTables tables) {
    UpkeepLimits limits = new UpkeepLimits(tables.read(FILE, "limit", UpkeepLimits::limit));
    for (UpkeepLimit name : UpkeepLimit.values()) {
      if (!limits.byName.containsKey(name)) {
        tables.problem(FILE, 0, "limit", "the row '" + name.row() + "' is missing");
      }
    }
    limits.rising(tables, UpkeepLimit.FAN_REPLACE_BELOW, UpkeepLimit.FAN_REPLACE_ABOVE);
    limits.rising(tables, UpkeepLimit.FAN_REPLACE_AFTER, UpkeepLimit.FAN_LOOK_AFTER);
    limits.rising(tables, UpkeepLimit.IMBALANCE_STOP_AFTER, UpkeepLimit.IMBALANCE_LOOK_AFTER);
    limits.rising(tables, UpkeepLimit.SURVEY_AFTER, UpkeepLimit.SURVEY_AGAIN);
    return limits;
  }

  private static Limit limit(TableRow row) {
    String key = row.required("limit");
    UpkeepLimit name =
        Arrays.stream(UpkeepLimit.values())
            .filter(limit -> limit.row().equals(key))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("nothing reads a limit '" + key + "'"));
    Quantity value = row.quantity("value", "measure");
    if (value.measure().dimension() != name.dimension()) {
      throw new IllegalArgumentException(
          key + " is a " + name.dimension() + " and not in " + value.measure());
    }
    if (value.value() < 0 && name.dimension() != Dimension.TEMPERATURE) {
      throw new IllegalArgumentException(key + " must not be below 0");
    }
    row.required("meaning");
    return new Limit(name, value, row.source());
  }

  private void rising(RuleTables tables, UpkeepLimit low, UpkeepLimit high) {
    if (byName.containsKey(low) && byName.containsKey(high) && value(low) >= value(high)) {
      tables.problem(FILE, 0, "value", high.row() + " must be above " + low.row());
    }
  }

  /** In the unit used inside: °C, K, days, percent, volts, or a plain number. */
  double value(UpkeepLimit name) {
    return values[name.ordinal()];
  }

  /** As it stands in the table. */
  Quantity shown(UpkeepLimit name) {
    return byName.get(name).value;
  }

  Source source(UpkeepLimit name) {
    return byName.get(name).source;
  }

  /** The day that many days of the limit after another. */
  LocalDate after(LocalDate day, UpkeepLimit days) {
    return day.plusDays(Math.round(value(days)));
  }
}
