package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.LeakState;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/** Leak inspection where the leak rate of the latest addition is over its legal threshold. */
final class LeakRateRule implements UpkeepRule {

  private static final String TEMPLATE =
      "Refrigerant added on {added} puts the leak rate over the threshold of {threshold}"
          + " (annualizing {annualizing}, rolling average {rolling}): the leak is to be found and"
          + " repaired by {date}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    LeakState leak = unit.assessment().leak();
    if (!leak.over() || leak.additions().isEmpty()) {
      return List.of();
    }
    LocalDate added = leak.additions().get(leak.additions().size() - 1).date();
    LocalDate inspected = unit.done(TaskCode.LEAK);
    if (inspected != null && !inspected.isBefore(added)) {
      return List.of();
    }
    UpkeepLimits limits = unit.tables().limits();
    LocalDate date = limits.after(added, UpkeepLimit.LEAK_RATE_AFTER);
    return List.of(
        Ask.strictly(
            TaskCode.LEAK,
            date,
            UnitCase.reason(
                "leak-rate-over",
                TEMPLATE,
                limits.source(UpkeepLimit.LEAK_RATE_AFTER),
                "added",
                added,
                "threshold",
                rate(leak.thresholdPercentPerYear()),
                "annualizing",
                rate(leak.annualizingPercentPerYear()),
                "rolling",
                rate(leak.rollingPercentPerYear()),
                "date",
                date)));
  }

  private static Object rate(OptionalDouble percent) {
    return percent.isEmpty()
        ? "unknown"
        : new Quantity(percent.getAsDouble(), Measure.PERCENT_PER_YEAR);
  }
}
