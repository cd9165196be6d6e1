package coldround.fleet;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Within what readings are believed: the rows of scoring/suspect-readings.csv. */
final class SuspectLimits {

  /** Every row the checks ask for, so that a table without one stops the start. */
  private static final List<String> NEEDED =
      List.of(
          "condensing-split",
          "usual-split",
          "condensing",
          "condenses-below",
          "suction-saturated",
          "suction-over-head");

  private static final String FILE = "suspect-readings.csv";

  /**
   * One row.
   *
   * @param least in the unit used inside; minus infinity for none
   * @param greatest in the unit used inside; infinity for none
   * @param measure the one of the table, to tell the limits in
   */
  record Limit(String name, double least, double greatest, Measure measure) {

    boolean holds(double base) {
      return base >= least && base <= greatest;
    }

    double middle() {
      return (least + greatest) / 2;
    }

    /** "from -40.0 °F to 140.0 °F". */
    String told() {
      if (Double.isInfinite(least)) {
        return "at most " + told(greatest);
      }
      return Double.isInfinite(greatest)
          ? "at least " + told(least)
          : "from " + told(least) + " to " + told(greatest);
    }

    private String told(double base) {
      return new Quantity(measure.fromBase(base), measure).toString();
    }
  }

  private final Map<String, Limit> limits;

  private SuspectLimits(Map<String, Limit> limits) {
    this.limits = limits;
  }

  /** What is wrong with the table becomes problems of the tables. */
  static SuspectLimits read(RuleTables tables) {
    Map<String, Limit> limits =
        tables.read(FILE, "limit", SuspectLimits::limit).stream()
            .collect(Collectors.toMap(Limit::name, Function.identity()));
    for (String name : NEEDED) {
      if (!limits.containsKey(name)) {
        tables.problem(FILE, 0, "limit", "the row " + name + " is missing");
      }
    }
    return new SuspectLimits(limits);
  }

  private static Limit limit(TableRow row) {
    row.source();
    Measure measure = Measure.of(row.required("measure"));
    OptionalDouble least = row.optionalNumber("least");
    OptionalDouble greatest = row.optionalNumber("greatest");
    if (least.isEmpty() && greatest.isEmpty()) {
      throw new IllegalArgumentException("a row needs least, greatest or both");
    }
    double from = least.isEmpty() ? Double.NEGATIVE_INFINITY : measure.toBase(least.getAsDouble());
    double to =
        greatest.isEmpty() ? Double.POSITIVE_INFINITY : measure.toBase(greatest.getAsDouble());
    if (from > to) {
      throw new IllegalArgumentException("least is above greatest");
    }
    return new Limit(row.required("limit"), from, to, measure);
  }

  /** Null where the table has none for that reading or nameplate value. */
  Limit find(String name) {
    return limits.get(name);
  }
}
