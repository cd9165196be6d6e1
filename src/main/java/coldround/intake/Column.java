package coldround.intake;

import coldround.fleet.Kind;
import coldround.quantity.Measure;
import coldround.table.TableRow;
import java.util.Locale;
import java.util.Set;

/**
 * One column of the standard form: a row of import/columns.csv.
 *
 * @param measure unit of measure that the limits are in and that is assumed where none is named;
 *     null for a column that does not measure
 * @param list name of the list of codes; empty for none
 * @param least least value or earliest day; empty for none
 * @param greatest greatest value, latest day, or most characters; empty for none
 * @param example a cell as it may stand
 */
public record Column(
    Kind kind,
    String name,
    Use use,
    ColumnType type,
    Measure measure,
    String list,
    String least,
    String greatest,
    String meaning,
    String example) {

  /** Whether a cell must be filled. */
  public enum Use {
    /** Part of the natural key. */
    KEY,
    REQUIRED,
    OPTIONAL
  }

  private static final Set<String> USES = Set.of("key", "required", "optional");

  /**
   * @throws IllegalArgumentException for a row that makes no column
   */
  static Column of(TableRow row) {
    String kind = row.required("kind");
    String measure = row.text("measure");
    return new Column(
        Kind.find(kind)
            .orElseThrow(() -> new IllegalArgumentException("'" + kind + "' is no kind of list")),
        row.required("column"),
        Use.valueOf(row.oneOf("use", USES).toUpperCase(Locale.ROOT)),
        ColumnType.of(row.oneOf("type", ColumnType.codes())),
        measure.isEmpty() ? null : Measure.of(measure),
        row.text("list"),
        row.text("least"),
        row.text("greatest"),
        row.required("meaning"),
        row.text("example"));
  }

  /**
   * @throws IllegalArgumentException when type and measure do not belong together
   */
  public Column {
    if (type.hasMeasure() != (measure != null)) {
      throw new IllegalArgumentException(
          "a column of type "
              + type.code()
              + " has "
              + (measure == null ? "a" : "no")
              + " measure");
    }
  }

  /** True when the column must be there and its cells filled. */
  public boolean mustBeFilled() {
    return use != Use.OPTIONAL;
  }

  /** True when it is part of what tells two rows apart. */
  public boolean isKey() {
    return use == Use.KEY || type == ColumnType.PART;
  }

  /** True for a unit of measure that its values may be given in. */
  public boolean accepts(Measure other) {
    return measure != null && measure.dimension().accepts(other.dimension());
  }

  /** As in the header of a template: {@code head_pressure [psig]}. */
  public String header() {
    return measure == null ? name : name + " [" + measure + "]";
  }
}
