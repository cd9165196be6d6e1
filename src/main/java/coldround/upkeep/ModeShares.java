package coldround.upkeep;

import coldround.scoring.FaultState;
import coldround.table.RuleTables;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How the faults of a unit divide among the failure modes: the usual shares of
 * scoring/failure-modes.csv, moved by the unit's own faults.
 */
final class ModeShares {

  private static final String FILE = "failure-modes.csv";

  private final Map<String, Double> usual = new LinkedHashMap<>();
  private final double weight;

  private ModeShares(double weight) {
    this.weight = weight;
  }

  /**
   * @param weight faults that the usual shares weigh against the unit's own
   */
  static ModeShares load(RuleTables tables, double weight) {
    ModeShares shares = new ModeShares(weight);
    tables
        .read(FILE, "mode", row -> Map.entry(row.required("mode"), row.number("share", 1e-6, 1)))
        .forEach(mode -> shares.usual.put(mode.getKey(), mode.getValue()));
    return shares;
  }

  /** Share of the unit's faults to come that are of the mode, 0 to 1. */
  double of(String mode, FaultState faults) {
    long own = 0;
    for (var event : faults.events()) {
      own += event.mode().equals(mode) ? 1 : 0;
    }
    double prior = weight * usual.getOrDefault(mode, 0.0);
    return (prior + own) / (weight + faults.events().size());
  }
}
