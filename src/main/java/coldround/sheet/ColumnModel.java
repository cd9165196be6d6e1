package coldround.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the cells of each column of a table look like, learnt from rows read without a fault. Gives
 * the cost of a cell standing in a column: the negative logarithm of how often its look was seen
 * there, from the exact look down to the coarse class.
 */
final class ColumnModel {

  /** Shares of exact look, coarse look and class in the estimate; the rest is for the unseen. */
  private static final double EXACT = 0.4;

  private static final double COARSE = 0.35;
  private static final double KIND = 0.2;
  private static final double UNSEEN = 1e-5;
  private static final int MOST_LOOKS = 400;

  private static final class Column {
    private final Map<String, Integer> exact = new HashMap<>();
    private final Map<String, Integer> coarse = new HashMap<>();
    private final int[] kinds = new int[Shape.Kind.values().length];
    private double lengthSum;

    private void learn(String cell) {
      kinds[Shape.kind(cell).ordinal()]++;
      count(exact, Shape.exact(cell));
      count(coarse, Shape.coarse(cell));
      lengthSum += Math.log1p(cell.length());
    }

    private static void count(Map<String, Integer> looks, String look) {
      if (looks.size() < MOST_LOOKS || looks.containsKey(look)) {
        looks.merge(look, 1, Integer::sum);
      }
    }
  }

  private final List<Column> columns = new ArrayList<>();
  private int rows;

  ColumnModel(int width) {
    for (int i = 0; i < width; i++) {
      columns.add(new Column());
    }
  }

  int width() {
    return columns.size();
  }

  int rows() {
    return rows;
  }

  void learn(List<String> cells) {
    for (int i = 0; i < columns.size(); i++) {
      columns.get(i).learn(cells.get(i));
    }
    rows++;
  }

  /** Cost of the cell standing in the column; small is usual. */
  double cost(int column, String cell) {
    if (rows == 0) {
      return 0;
    }
    Column seen = columns.get(column);
    Shape.Kind kind = Shape.kind(cell);
    double share = KIND * seen.kinds[kind.ordinal()] / rows + UNSEEN;
    share += COARSE * seen.coarse.getOrDefault(Shape.coarse(cell), 0) / rows;
    share += EXACT * seen.exact.getOrDefault(Shape.exact(cell), 0) / rows;
    return -Math.log(share) + lengthCost(seen, kind, cell);
  }

  /** Cells of running text have no look of their own; their length says a little. */
  private double lengthCost(Column seen, Shape.Kind kind, String cell) {
    if (kind != Shape.Kind.TEXT) {
      return 0;
    }
    return 0.5 * Math.abs(Math.log1p(cell.length()) - seen.lengthSum / rows);
  }

  /** Whether cells of this class are usual in the column. */
  boolean isUsual(int column, String cell) {
    return rows == 0
        || columns.get(column).kinds[Shape.kind(cell).ordinal()] * 20 >= rows
        || columns.get(column).coarse.containsKey(Shape.coarse(cell));
  }

  /** Share of the rows whose cell in the column is of the class. */
  double share(int column, Shape.Kind kind) {
    return rows == 0 ? 0 : (double) columns.get(column).kinds[kind.ordinal()] / rows;
  }
}
