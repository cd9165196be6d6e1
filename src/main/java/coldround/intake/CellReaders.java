package coldround.intake;

import coldround.fleet.Entry;
import coldround.quantity.Measure;

/** The reader for the cells of a column, by the type of the column. */
final class CellReaders {

  private CellReaders() {}

  /**
   * @param measure unit of measure of the column in the file; null where the column has none
   * @throws IllegalArgumentException when the row of the table makes no reader
   */
  static CellReader reader(Column column, Measure measure, CellRules rules) {
    return switch (column.type()) {
      case CODE, TEXT, PART -> TextCell.of(column);
      case DATE -> DateCell.of(column, rules);
      case NUMBER -> NumberCell.of(column, rules);
      case MEASURED -> new MeasuredCell(column, measure, rules);
      case READING -> new ReadingCell(column.name(), new MeasuredCell(column, measure, rules));
      case CHOICE -> ChoiceCell.of(column, rules);
      case CODES -> CodesCell.of(column, rules);
      case GRADE -> grade(ChoiceCell.of(column, rules));
      case ZONE -> new ZoneCell();
      case DAYS -> new DaysCell(DateCell.of(column, rules));
      case HOURS -> new HoursCell(TextCell.of(column));
      case JURISDICTION -> new JurisdictionCell();
      case REFRIGERANT -> new RefrigerantCell(TextCell.of(column), rules);
      // the cells of the long form say what they mean only together: see LongReading
      case QUANTITY, VALUE, MEASURE -> (text, refusals) -> text;
    };
  }

  private static CellReader grade(ChoiceCell choice) {
    return (text, refusals) -> {
      String code = choice.code(text, refusals);
      return code == null ? null : new Entry.Grade(code);
    };
  }
}
