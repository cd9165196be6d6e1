package coldround.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * The ways of a search for the best reading of a record that are still open, by the place they have
 * reached: the few cheapest at each place, and none that cannot come near the best reading known.
 */
final class MendFrontier {

  /** Readings dearer than the best by this much do not matter. */
  static final double MARGIN = 3;

  private static final int BEAM = 8;
  private static final int MOST_EDITS = 4;

  /** Bounds the time for one record. */
  private static final int MOST_STEPS = 150_000;

  private final TreeMap<Integer, List<MendWay>> open = new TreeMap<>();
  private MendWay best;
  private int steps;

  /** Steps taken so far. */
  int steps() {
    return steps;
  }

  boolean isExhausted() {
    return steps > MOST_STEPS;
  }

  /** The cheapest reading, or null. */
  MendWay best() {
    return best;
  }

  /** The ways at the first open place, or null if there are none. */
  List<MendWay> next() {
    return open.isEmpty() || isExhausted() ? null : open.pollFirstEntry().getValue();
  }

  /** Counts work that opens no way. */
  void step() {
    steps++;
  }

  void finish(MendWay way) {
    best = MendWay.best(best, way);
  }

  void add(MendWay way) {
    steps++;
    if (way.edits() > MOST_EDITS || (best != null && way.cost() >= best.cost() + MARGIN)) {
      return;
    }
    List<MendWay> ways = open.computeIfAbsent(way.at(), k -> new ArrayList<>());
    for (int i = 0; i < ways.size(); i++) {
      if (ways.get(i).column() == way.column()) {
        ways.set(i, MendWay.cheaper(ways.get(i), way));
        return;
      }
    }
    ways.add(way);
    if (ways.size() > BEAM) {
      ways.remove(dearest(ways));
    }
  }

  private static int dearest(List<MendWay> ways) {
    int worst = 0;
    for (int i = 1; i < ways.size(); i++) {
      worst = ways.get(i).cost() > ways.get(worst).cost() ? i : worst;
    }
    return worst;
  }
}
