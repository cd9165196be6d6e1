package coldround.fleet.edge;

import coldround.fleet.FleetWriting.Doubted;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.UnitIds;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What a writer has to tell of a batch beside its outcomes. */
final class Notes {

  private final Set<String> units = new HashSet<>();
  private final List<Doubted> doubted = new ArrayList<>();

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

  Written written(List<Outcome> outcomes) {
    return new Written(outcomes, units, doubted);
  }
}
