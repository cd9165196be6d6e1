package coldround.table;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One row of a rule table with checked access to its cells. A cell that cannot be read is an {@link
 * IllegalCell}, which the table turns into a problem with file and line.
 */
public final class TableRow {

  /** A cell that does not hold what its column needs. */
  static final class IllegalCell extends IllegalArgumentException {
    final String column;

    IllegalCell(String column, String message) {
      super(message);
      this.column = column;
    }
  }

  private final String table;
  private final List<String> keyColumns;
  private final Map<String, String> cells;

  TableRow(String table, List<String> keyColumns, Map<String, String> cells) {
    this.table = table;
    this.keyColumns = keyColumns;
    this.cells = cells;
  }

  /** The cell, trimmed; empty when the column is absent or blank. */
  public String text(String column) {
    return cells.getOrDefault(column, "");
  }

  /** The cell, which must not be empty. */
  public String required(String column) {
    String text = text(column);
    if (text.isEmpty()) {
      throw new IllegalCell(column, "must not be empty");
    }
    return text;
  }

  public String oneOf(String column, Set<String> allowed) {
    String text = required(column);
    if (!allowed.contains(text)) {
      throw new IllegalCell(column, "'" + text + "' is not one of " + allowed);
    }
    return text;
  }

  public double number(String column) {
    return optionalNumber(column)
        .orElseThrow(() -> new IllegalCell(column, "needs a number, with a point for decimals"));
  }

  public OptionalDouble optionalNumber(String column) {
    String text = text(column);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double value = Double.parseDouble(text);
      if (Double.isFinite(value)) {
        return OptionalDouble.of(value);
      }
    } catch (NumberFormatException e) {
      // told below, with the cell's text
    }
    throw new IllegalCell(column, "'" + text + "' is not a number");
  }

  /** A number from least to greatest, both included. */
  public double number(String column, double least, double greatest) {
    double value = number(column);
    if (value < least || value > greatest) {
      throw new IllegalCell(column, value + " is outside " + least + " to " + greatest);
    }
    return value;
  }

  public int whole(String column) {
    double value = number(column);
    if (value != Math.rint(value)) {
      throw new IllegalCell(column, value + " must be a whole number");
    }
    return (int) value;
  }

  public LocalDate date(String column) {
    return optionalDate(column).orElseThrow(() -> new IllegalCell(column, "needs a date"));
  }

  public Optional<LocalDate> optionalDate(String column) {
    String text = text(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      throw new IllegalCell(column, "'" + text + "' is not a date such as 2026-05-31");
    }
  }

  /** A value in one column and its unit of measure in another. */
  public Quantity quantity(String valueColumn, String measureColumn) {
    String code = required(measureColumn);
    Measure measure =
        Measure.find(code)
            .orElseThrow(
                () -> new IllegalCell(measureColumn, "'" + code + "' is no unit of measure"));
    return new Quantity(number(valueColumn), measure);
  }

  /** Several codes separated by semicolons; none for an empty cell. */
  public List<String> codes(String column) {
    return Arrays.stream(text(column).split(";"))
        .map(String::strip)
        .filter(code -> !code.isEmpty())
        .toList();
  }

  /** This row as the source of a number. */
  public Source source() {
    return new Source(table, key(), required("source"));
  }

  /** What names the row: the key columns, none of which may be empty. */
  String key() {
    return keyColumns.stream().map(this::required).collect(Collectors.joining(" "));
  }
}
