package coldround.rounds.search;

/**
 * Distances or minutes from place to place, not necessarily the same both ways. A pair that cannot
 * be travelled has an infinite entry.
 */
public interface Matrix {

  /** Number of places. */
  int size();

  double between(int from, int to);

  /** A matrix of rows "from" and columns "to"; the array is not copied. */
  static Matrix of(double[][] rows) {
    return new Matrix() {
      @Override
      public int size() {
        return rows.length;
      }

      @Override
      public double between(int from, int to) {
        return rows[from][to];
      }
    };
  }
}
