package coldround.rounds.search.engine;

import java.util.Arrays;

/** For each stop the other stops, nearest first, as many as are of use. */
final class Neighbours {

  /** Beyond this many the memory grows with the square and the search never looks that far. */
  private static final int MOST = 400;

  private Neighbours() {}

  static int[][] of(Model model) {
    int[] active = model.active;
    int keep = Math.min(MOST, Math.max(0, active.length - 1));
    int[][] near = new int[model.stops][];
    long[] keys = new long[active.length];
    for (int s : active) {
      for (int i = 0; i < active.length; i++) {
        keys[i] = key(model, s, active[i]);
      }
      Arrays.sort(keys);
      near[s] = others(keys, s, keep);
    }
    return near;
  }

  /** Distance there and back in the upper half, the stop in the lower: sorts as we want. */
  private static long key(Model model, int from, int to) {
    float there = (float) (model.dist[from * model.nodes + to]);
    float back = (float) (model.dist[to * model.nodes + from]);
    return ((long) Float.floatToIntBits(there + back) << 32) | to;
  }

  private static int[] others(long[] sorted, int self, int keep) {
    int[] others = new int[keep];
    for (int i = 0, n = 0; n < keep; i++) {
      int stop = (int) sorted[i];
      if (stop != self) {
        others[n++] = stop;
      }
    }
    return others;
  }
}
