package coldround.fleet;

import java.util.List;
import java.util.Set;

/** Storing what files and calls bring. */
public interface FleetWriting {

  /** What became of one entry. */
  enum Outcome {
    CREATED,
    CHANGED,
    UNCHANGED,
    UNKNOWN_CUSTOMER,
    UNKNOWN_SITE,
    UNKNOWN_UNIT,
    UNKNOWN_VISIT,
    /** Both the tag and the previous tag name a unit: which of the two is meant cannot be told. */
    TAG_TAKEN;

    /** True when nothing was written because the entry points at something that is not there. */
    public boolean refused() {
      return this != CREATED && this != CHANGED && this != UNCHANGED;
    }
  }

  /**
   * Outcomes in the order of the entries, and the ids of the units whose history changed by them.
   */
  record Written(List<Outcome> outcomes, Set<String> units) {
    public Written {
      outcomes = List.copyOf(outcomes);
      units = Set.copyOf(units);
    }
  }

  /**
   * Merges the entries with what is stored, in their order, and writes what differs. The caller
   * holds the transaction and keeps batches to some hundred entries.
   */
  Written write(Kind kind, List<Entry> batch);
}
