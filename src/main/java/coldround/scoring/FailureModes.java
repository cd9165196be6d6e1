package coldround.scoring;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Failure modes with their usual share of all faults: scoring/failure-modes.csv. */
public final class FailureModes {

  private static final String FILE = "failure-modes.csv";
  private static final String OTHER = "other";
  private static final double ROUNDING = 1e-9;

  /** One mode. */
  record FailureMode(String mode, String name, double share, Source source) {}

  private final Map<String, FailureMode> byMode = new LinkedHashMap<>();

  private FailureModes() {}

  public static FailureModes load(RuleTables tables) {
    FailureModes modes = new FailureModes();
    tables
        .read(
            FILE,
            "mode",
            row ->
                new FailureMode(
                    row.required("mode"),
                    row.required("name"),
                    row.number("share", 1e-6, 1),
                    row.source()))
        .forEach(mode -> modes.byMode.put(mode.mode, mode));
    double sum = modes.byMode.values().stream().mapToDouble(FailureMode::share).sum();
    if (Math.abs(sum - 1) > ROUNDING) {
      tables.problem(FILE, 0, "share", "the shares add up to " + sum + ", not 1");
    }
    if (!modes.byMode.containsKey(OTHER)) {
      tables.problem(FILE, 0, "mode", "the row 'other' is missing");
    }
    return modes;
  }

  /** The mode; for a word that is none, what the table says of other modes. */
  FailureMode of(String mode) {
    FailureMode known = byMode.get(mode);
    return known != null ? known : byMode.get(OTHER);
  }

  /** The mode's name for a person; the word itself when the table does not have it. */
  String name(String mode) {
    FailureMode known = byMode.get(mode);
    return known != null ? known.name : mode;
  }

  /** Codes of all modes, in the order of the table. */
  public Set<String> codes() {
    return Collections.unmodifiableSet(byMode.keySet());
  }

  Collection<FailureMode> all() {
    return Collections.unmodifiableCollection(byMode.values());
  }
}
