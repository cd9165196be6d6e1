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
   * A value that was kept but is not believed.
   *
   * @param entry place of the entry in its batch
   * @param column name of the reading
   * @param why with the likely slip
   */
  record Doubted(int entry, String column, String why) {}

  /**
   * Outcomes in the order of the entries, the ids of the units whose history changed by them, and
   * what is not believed of them.
   */
  record Written(List<Outcome> outcomes, Set<String> units, List<Doubted> doubted) {
    public Written {
      outcomes = List.copyOf(outcomes);
      units = Set.copyOf(units);
      doubted = List.copyOf(doubted);
    }
  }

  /**
   * Merges the entries with what is stored, in their order, and writes what differs. The caller
   * holds the transaction and keeps batches to some hundred entries. What is put in the place of
   * something is kept as a {@link Correction}.
   *
   * @param origin of corrections: id of the import, or one of the names there
   */
  Written write(Kind kind, List<Entry> batch, String origin);
}
