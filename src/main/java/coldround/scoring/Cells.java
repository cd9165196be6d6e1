package coldround.scoring;

import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.table.TableRow;

/** Cells of rule tables that hold a unit of measure. */
final class Cells {

  private Cells() {}

  static Measure measure(TableRow row, String column, Dimension dimension) {
    Measure measure = Measure.of(row.required(column));
    if (measure.dimension() != dimension) {
      throw new IllegalArgumentException(column + " " + measure + " is no " + dimension);
    }
    return measure;
  }
}
