package coldround.benchmark;

import coldround.rounds.search.Matrix;

/** Straight distances between points of the plane, in full precision. */
final class Points {

  private Points() {}

  static Matrix distances(double[] x, double[] y) {
    double[][] rows = new double[x.length][x.length];
    for (int i = 0; i < x.length; i++) {
      for (int j = 0; j < x.length; j++) {
        double dx = x[i] - x[j];
        double dy = y[i] - y[j];
        rows[i][j] = Math.sqrt(dx * dx + dy * dy);
      }
    }
    return Matrix.of(rows);
  }
}
