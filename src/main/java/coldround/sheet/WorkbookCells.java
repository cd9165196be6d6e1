package coldround.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;

/** Cells of a workbook as the text a CSV export would hold, dates in ISO 8601. */
final class WorkbookCells {

  /** Letters of a format that stand for parts of a date or time, outside quotes and brackets. */
  private static final Pattern DATE =
      Pattern.compile("[dDyYhHsS]|(?<![a-zA-Z])[mM]{1,5}(?![a-zA-Z])");

  private static final Pattern LITERAL =
      Pattern.compile("\"[^\"]*\"|\\\\.|\\[[^\\]]*\\]|_.|\\*.|General");

  /** Spreadsheets show no more digits, so that 0.1 + 0.2 reads 0.3. */
  private static final MathContext SHOWN = new MathContext(15);

  private final boolean from1904;

  WorkbookCells(boolean from1904) {
    this.from1904 = from1904;
  }

  /** The cells of a row up to its last filled one. */
  List<String> text(org.dhatim.fastexcel.reader.Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.getCellCount(); i++) {
      cells.add(text(row.getCell(i)));
    }
    while (!cells.isEmpty() && cells.get(cells.size() - 1).isEmpty()) {
      cells.remove(cells.size() - 1);
    }
    return cells;
  }

  private String text(Cell cell) {
    if (cell == null || cell.getType() == CellType.EMPTY || cell.getRawValue() == null) {
      return "";
    }
    String raw = cell.getRawValue();
    return switch (cell.getType()) {
      case NUMBER -> number(raw, cell.getDataFormatString());
      case FORMULA -> isNumber(raw) ? number(raw, cell.getDataFormatString()) : raw;
      case BOOLEAN -> raw.equals("1") || raw.equalsIgnoreCase("true") ? "true" : "false";
      default -> cell.getText();
    };
  }

  private static boolean isNumber(String raw) {
    try {
      new BigDecimal(raw.strip());
      return true;
    } catch (NumberFormatException e) {
      return false;
    }
  }

  private String number(String raw, String format) {
    if (!isNumber(raw)) {
      return raw;
    }
    BigDecimal value = new BigDecimal(raw.strip());
    String date = format != null && isDate(format) ? moment(value.doubleValue()) : null;
    return date == null ? plain(value) : date;
  }

  private static String plain(BigDecimal value) {
    BigDecimal shown = value.round(SHOWN);
    return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
  }

  static boolean isDate(String format) {
    String first = format.split(";", 2)[0];
    return DATE.matcher(LITERAL.matcher(first).replaceAll("")).find();
  }

  /** A date, a time of day below one day, or both; null outside the calendar. */
  private String moment(double serialDays) {
    if (serialDays >= 0 && serialDays < 1) {
      return LocalTime.ofSecondOfDay(Math.min(86_399, Math.round(serialDays * 86_400))).toString();
    }
    LocalDateTime moment =
        ExcelCells.moment(from1904 ? serialDays + 1462 : serialDays).orElse(null);
    if (moment == null) {
      return null;
    }
    boolean midnight = moment.toLocalTime().equals(LocalTime.MIDNIGHT);
    return midnight ? moment.toLocalDate().toString() : moment.toString();
  }
}
