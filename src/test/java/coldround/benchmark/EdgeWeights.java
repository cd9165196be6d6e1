package coldround.benchmark;

import coldround.rounds.search.Matrix;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;

/** Distances of a TSPLIB file (Reinelt, "TSPLIB 95", section 2), by position in the node list. */
final class EdgeWeights {

  /** The value TSPLIB prescribes, so that all programs round alike. */
  private static final double TSPLIB_PI = 3.141592;

  private static final double TSPLIB_EARTH_RADIUS_KM = 6378.388;

  private EdgeWeights() {}

  /**
   * Distances between the nodes.
   *
   * @param real true for the profitable tours, whose literature does not round
   */
  static Matrix of(TsplibSections file, List<Integer> nodes, boolean real) {
    String type = file.entry("EDGE_WEIGHT_TYPE", "EUC_2D").toUpperCase(Locale.ROOT);
    return switch (type) {
      case "EUC_2D" ->
          byCoordinates(file, nodes, real ? EdgeWeights::length : EdgeWeights::rounded);
      case "CEIL_2D" -> byCoordinates(file, nodes, (a, b) -> Math.ceil(length(a, b)));
      case "GEO" -> byCoordinates(file, nodes, EdgeWeights::geographical);
      case "EXPLICIT" -> explicit(file, nodes.size());
      default ->
          throw new IllegalArgumentException("EDGE_WEIGHT_TYPE " + type + " is not supported");
    };
  }

  private static Matrix byCoordinates(
      TsplibSections file, List<Integer> nodes, ToDoubleBiFunction<double[], double[]> length) {
    Map<Integer, double[]> points = file.rows("NODE_COORD_SECTION", 2);
    double[][] rows = new double[nodes.size()][nodes.size()];
    for (int i = 0; i < rows.length; i++) {
      for (int j = 0; j < rows.length; j++) {
        double[] from = points.get(nodes.get(i));
        rows[i][j] = i == j ? 0 : length.applyAsDouble(from, points.get(nodes.get(j)));
      }
    }
    return Matrix.of(rows);
  }

  private static double length(double[] a, double[] b) {
    double dx = a[0] - b[0];
    double dy = a[1] - b[1];
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** nint of TSPLIB: half up. */
  private static double rounded(double[] a, double[] b) {
    return Math.floor(length(a, b) + 0.5);
  }

  private static double geographical(double[] a, double[] b) {
    double q1 = Math.cos(radians(a[1]) - radians(b[1]));
    double q2 = Math.cos(radians(a[0]) - radians(b[0]));
    double q3 = Math.cos(radians(a[0]) + radians(b[0]));
    double angle = Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3));
    return (int) (TSPLIB_EARTH_RADIUS_KM * angle + 1);
  }

  /** Degrees and minutes written as degrees.minutes. */
  private static double radians(double value) {
    int degrees = (int) value;
    return TSPLIB_PI * (degrees + 5 * (value - degrees) / 3) / 180;
  }

  private static Matrix explicit(TsplibSections file, int size) {
    String format = file.entry("EDGE_WEIGHT_FORMAT", "FULL_MATRIX").toUpperCase(Locale.ROOT);
    double[] values =
        file.section("EDGE_WEIGHT_SECTION").stream()
            .mapToDouble(TsplibSections.Token::number)
            .toArray();
    double[][] rows = new double[size][size];
    int read = 0;
    for (int i = 0; i < size; i++) {
      for (int j = first(format, i); j < last(format, i, size); j++) {
        if (read == values.length) {
          throw new IllegalArgumentException("EDGE_WEIGHT_SECTION has too few numbers");
        }
        rows[i][j] = values[read++];
        rows[j][i] = format.equals("FULL_MATRIX") ? rows[j][i] : rows[i][j];
      }
    }
    if (read != values.length) {
      throw new IllegalArgumentException("EDGE_WEIGHT_SECTION has too many numbers");
    }
    return Matrix.of(rows);
  }

  private static int first(String format, int row) {
    return switch (format) {
      case "FULL_MATRIX", "LOWER_ROW", "LOWER_DIAG_ROW" -> 0;
      case "UPPER_ROW" -> row + 1;
      case "UPPER_DIAG_ROW" -> row;
      default ->
          throw new IllegalArgumentException("EDGE_WEIGHT_FORMAT " + format + " is not supported");
    };
  }

  private static int last(String format, int row, int size) {
    return switch (format) {
      case "LOWER_ROW" -> row;
      case "LOWER_DIAG_ROW" -> row + 1;
      default -> size;
    };
  }
}
