package coldround.rounds.search.engine;

/**
 * Takes strings of neighbouring stops out of tours near a random stop: the adjacent string removal
 * of Christiaens and Vanden Berghe, "Slack Induction by String Removals for Vehicle Routing
 * Problems", Transportation Science 54 (2020), with the numbers given there.
 */
final class Ruin {

  /** Average number of stops taken out. */
  private static final double AVERAGE_REMOVED = 10;

  private static final int LONGEST_STRING = 10;

  /** Share of strings that keep some stops in their middle. */
  private static final double SPLIT_SHARE = 0.5;

  /** Chance that the middle kept grows by one more stop. */
  private static final double SPLIT_GROWS = 0.01;

  private final Solution solution;
  private final Chance chance;
  private final int[][] near;
  private final int[] ruinedAt;
  private int round;

  /** Stop around which the last ruin happened. */
  int seed;

  Ruin(Solution solution, Chance chance) {
    this.solution = solution;
    this.chance = chance;
    near = solution.model.near();
    ruinedAt = new int[solution.model.vehicles];
  }

  void run() {
    round++;
    seed = solution.own[chance.below(solution.own.length)];
    double longest = Math.min(LONGEST_STRING, averageSize());
    double mostStrings = 4 * AVERAGE_REMOVED / (1 + longest) - 1;
    int strings = (int) Math.floor(chance.unit() * mostStrings + 1);
    strings -= ruin(seed, longest) ? 1 : 0;
    int[] around = near[seed];
    for (int i = 0; i < around.length && strings > 0; i++) {
      strings -= ruin(around[i], longest) ? 1 : 0;
    }
  }

  private double averageSize() {
    int served = solution.model.active.length - solution.absentCount;
    return solution.used == 0 ? 1 : (double) served / solution.used;
  }

  /** Takes out a string around a stop if its tour has not lost one yet. */
  private boolean ruin(int stop, double longest) {
    int v = solution.tourOf[stop];
    if (v == Solution.NOWHERE || ruinedAt[v] == round || !solution.open[v]) {
      return false;
    }
    ruinedAt[v] = round;
    Tour tour = solution.tours[v];
    double most = Math.min(tour.size, longest);
    int length = (int) Math.floor(chance.unit() * most + 1);
    length = Math.min(length, tour.size);
    int kept = length > 1 && chance.unit() < SPLIT_SHARE ? keptInside(tour.size - length) : 0;
    mark(tour, solution.indexOf[stop], length, kept);
    solution.removeMarked(v);
    return true;
  }

  private int keptInside(int most) {
    int kept = Math.min(1, most);
    while (kept < most && chance.unit() < SPLIT_GROWS) {
      kept++;
    }
    return kept;
  }

  /** Marks a string of length + kept stops that contains the index, but for kept in its middle. */
  private void mark(Tour tour, int index, int length, int kept) {
    int span = length + kept;
    int first =
        chance.between(Math.max(1, index - span + 1), Math.min(index, tour.size - span + 1));
    int gap = kept == 0 ? span : chance.between(1, length - 1);
    for (int i = 0; i < span; i++) {
      solution.marked[tour.node[first + i]] = i < gap || i >= gap + kept;
    }
  }
}
