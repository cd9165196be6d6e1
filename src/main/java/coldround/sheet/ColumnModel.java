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

    private void learn(Shape look) {
      kinds[look.kind().ordinal()]++;
      count(exact, look.exact());
      count(coarse, look.coarse());
      lengthSum += look.logLength();
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
      columns.get(i).learn(Shape.of(cells.get(i)));
    }
    rows++;
  }

  /** Cost of a cell of that look standing in the column; small is usual. */
  double cost(int column, Shape look) {
    if (rows == 0) {
      return 0;
    }
    Column seen = columns.get(column);
    double share = KIND * seen.kinds[look.kind().ordinal()] / rows + UNSEEN;
    share += COARSE * seen.coarse.getOrDefault(look.coarse(), 0) / rows;
    share += EXACT * seen.exact.getOrDefault(look.exact(), 0) / rows;
    return -Math.log(share) + lengthCost(seen, look);
  }

  /** Cells of running text have no look of their own; their length says a little. */
  private double lengthCost(Column seen, Shape look) {
    if (look.kind() != Shape.Kind.TEXT) {
      return 0;
    }
    return 0.5 * Math.abs(look.logLength() - seen.lengthSum / rows);
  }

  /** Whether cells of this class or look are usual in the column. */
  boolean isUsual(int column, String cell) {
    Column seen = columns.get(column);
    return rows == 0
        || seen.kinds[Shape.kind(cell).ordinal()] * 20 >= rows
        || seen.coarse.containsKey(Shape.of(cell).coarse());
  }
}
