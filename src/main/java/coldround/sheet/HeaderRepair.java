package coldround.sheet;

import coldround.sheet.Fault.Code;
import coldround.sheet.RecordScanner.Form;
import coldround.sheet.RowMender.Mended;
import coldround.sheet.Sample.Entry;
import java.util.List;
import java.util.Set;

/**
 * Reads a header row that does not fit its table: a stray quote is taken literally, an empty label
 * too many left out, and another delimiter accepted if it gives exactly one label a column.
 */
final class HeaderRepair {

  private static final List<String> OTHERS = List.of(",", ";", "\t", "|", " ");
  private static final int LONGEST = 5_000;
  private static final int WIDEST = 100;

  /** Departures that leave no doubt about which label belongs to which column. */
  private static final Set<Code> HARMLESS = Set.of(Code.STRAY_QUOTE, Code.SURPLUS_DELIMITER);

  private final int width;
  private final Dialect dialect;

  HeaderRepair(int width, Dialect dialect) {
    this.width = width;
    this.dialect = dialect;
  }

  /** The labels: as many as the table has columns if the row can be read so, else as they stand. */
  List<String> labels(Entry record) {
    List<String> asTheyStand = HeaderRow.cut(record.cells(), width);
    if (asTheyStand.size() == width || !isPossible(record)) {
      return asTheyStand;
    }
    if (record.form() == Form.IRREGULAR) {
      Mended mended = mended(record, dialect);
      if (mended != null && HARMLESS.containsAll(mended.departures().keySet())) {
        return mended.cells();
      }
    }
    return 2 * record.width() <= width ? otherwiseDelimited(record, asTheyStand) : asTheyStand;
  }

  private boolean isPossible(Entry record) {
    boolean read = !record.text().isEmpty() && record.text().length() <= LONGEST;
    return read && width > 1 && width <= WIDEST;
  }

  private List<String> otherwiseDelimited(Entry record, List<String> asTheyStand) {
    for (String other : OTHERS) {
      Mended written = mended(record, dialect.delimitedBy(other));
      if (written != null && written.departures().isEmpty()) {
        return written.cells();
      }
    }
    return asTheyStand;
  }

  private Mended mended(Entry record, Dialect as) {
    return new RowMender(new ColumnModel(width), as).mend(record.text());
  }
}
