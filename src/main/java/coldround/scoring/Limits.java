package coldround.scoring;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The limits of scoring/limits.csv: what a practitioner may want another value for. */
public final class Limits {

  private static final double ROUNDING = 1e-9;
  private static final String FILE = "limits.csv";

  private record Limit(LimitName name, Quantity value, String meaning, Source source) {}

  private final Map<LimitName, Limit> byName = new EnumMap<>(LimitName.class);
  private final double[] values = new double[LimitName.values().length];

  private Limits(List<Limit> limits) {
    for (Limit limit : limits) {
      byName.put(limit.name, limit);
      values[limit.name.ordinal()] = base(limit);
    }
  }

  private static double base(Limit limit) {
    double base = limit.value.base();
    return limit.name.dimension() == Dimension.COUNT ? limit.value.value() : base;
  }

  public static Limits load(RuleTables tables) {
    Limits limits = new Limits(tables.read(FILE, "limit", Limits::limit));
    for (LimitName name : LimitName.values()) {
      if (!limits.byName.containsKey(name)) {
        tables.problem(FILE, 0, "limit", "the row '" + name.row() + "' is missing");
      }
    }
    limits.rising(tables, LimitName.FAN_LOAD_LEAST, LimitName.FAN_LOAD_MOST);
    limits.rising(tables, LimitName.IMBALANCE_DERATE, LimitName.IMBALANCE_MOST);
    limits.rising(tables, LimitName.EXCESS_WATCH, LimitName.EXCESS_LIMIT);
    limits.rising(tables, LimitName.EXCESS_LIMIT, LimitName.EXCESS_FULL);
    limits.rising(tables, LimitName.DID_NOT_HOLD, LimitName.REPEAT_WINDOW);
    limits.rising(tables, LimitName.PRIOR_LEAST_YEARS, LimitName.PRIOR_MOST_YEARS);
    return limits;
  }

  private static Limit limit(TableRow row) {
    LimitName name = name(row.required("limit"));
    Quantity value = row.quantity("value", "measure");
    if (value.measure().dimension() != name.dimension()) {
      throw new IllegalArgumentException(
          name.row() + " is a " + name.dimension() + " and not in " + value.measure());
    }
    if (value.value() < 0 && name.dimension() != Dimension.TEMPERATURE) {
      throw new IllegalArgumentException(name.row() + " must not be below 0");
    }
    return new Limit(name, value, row.required("meaning"), row.source());
  }

  private static LimitName name(String row) {
    return Arrays.stream(LimitName.values())
        .filter(name -> name.row().equals(row))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("nothing reads a limit '" + row + "'"));
  }

  private void rising(RuleTables tables, LimitName low, LimitName high) {
    if (byName.containsKey(low) && byName.containsKey(high) && value(low) >= value(high)) {
      tables.problem(FILE, 0, "value", high.row() + " must be above " + low.row());
    }
  }

  /** In the unit used inside: °C, K, days, percent, or a plain number. */
  public double value(LimitName name) {
    return values[name.ordinal()];
  }

  /**
   * Over the limit by more than rounding: 1.1 of 1 A is 110 % also where binary fractions make it a
   * trace more.
   */
  public boolean over(LimitName name, double value) {
    return value - value(name) > ROUNDING;
  }

  /** Under the limit by more than rounding. */
  public boolean under(LimitName name, double value) {
    return value(name) - value > ROUNDING;
  }

  /** As it stands in the table. */
  public Quantity shown(LimitName name) {
    return byName.get(name).value;
  }

  public Source source(LimitName name) {
    return byName.get(name).source;
  }
}
