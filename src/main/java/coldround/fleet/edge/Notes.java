package coldround.fleet.edge;

import coldround.fleet.FleetWriting.Doubted;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.Kind;
import coldround.fleet.UnitIds;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a writer has to tell of a batch beside its outcomes. */
final class Notes {

  private final Set<String> units = new HashSet<>();
  private final List<Doubted> doubted = new ArrayList<>();
  private final List<CorrectionRow> corrections = new ArrayList<>();

  /** The history of that unit changed. */
  void touched(Long unit) {
    units.add(UnitIds.text(unit));
  }

  /**
   * @param entry place of the entry in the batch
   */
  void doubted(int entry, String column, String why) {
    doubted.add(new Doubted(entry, column, why));
  }

  /**
   * Keeps every value that was there and no longer is.
   *
   * @param unit null for what is no unit's
   * @param item natural key behind that of the unit
   * @param before cells by column
   */
  void changed(
      Kind kind, Long unit, String item, Map<String, String> before, Map<String, String> now) {
    before.forEach(
        (column, former) -> {
          String later = now.getOrDefault(column, "");
          if (!later.equals(former)) {
            corrections.add(CorrectionRow.of(kind, unit, item, column, former, later));
          }
        });
  }

  List<CorrectionRow> corrections() {
    return corrections;
  }

  Written written(List<Outcome> outcomes) {
    return new Written(outcomes, units, doubted);
  }
}
