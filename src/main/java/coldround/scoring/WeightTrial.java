package coldround.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** What other weights would do to the order of a fleet. */
public final class WeightTrial {

  private static final Comparator<Line> BY_ID =
      Comparator.comparing((Line line) -> line.unitId().length()).thenComparing(Line::unitId);
  private static final Comparator<Move> MOST_FIRST =
      Comparator.comparing((Move move) -> -Math.abs(move.rankAfter() - move.rankBefore()))
          .thenComparing(Move::rankAfter);

  private WeightTrial() {}

  /** Score of one unit under the weights of the table and under those tried. */
  public record Line(
      String unitId, String customer, String site, String tag, double before, double after) {}

  /**
   * One unit with its places in the fleet.
   *
   * @param rankBefore 1 for the worst
   */
  public record Move(Line line, int rankBefore, int rankAfter) {
    /** True when its place or its score changes. */
    public boolean moved() {
      return rankBefore != rankAfter || line.before() != line.after();
    }
  }

  /** Those that move, farthest first. */
  public static List<Move> moves(List<Line> fleet) {
    Map<String, Integer> before = ranks(fleet, Line::before);
    Map<String, Integer> after = ranks(fleet, Line::after);
    return fleet.stream()
        .map(line -> new Move(line, before.get(line.unitId), after.get(line.unitId)))
        .filter(Move::moved)
        .sorted(MOST_FIRST)
        .toList();
  }

  /** Worst first; those of equal score in the order of the fleet list. */
  private static Map<String, Integer> ranks(List<Line> fleet, ToDoubleFunction<Line> score) {
    List<Line> sorted = new ArrayList<>(fleet);
    sorted.sort(Comparator.comparingDouble(score).thenComparing(BY_ID));
    Map<String, Integer> ranks = new HashMap<>();
    for (Line line : sorted) {
      ranks.put(line.unitId, ranks.size() + 1);
    }
    return ranks;
  }
}
