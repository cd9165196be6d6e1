package coldround.sheet;

import coldround.sheet.Fault.Code;
import coldround.sheet.RowMender.Mended;
import java.util.ArrayList;
import java.util.List;

/** Words what was wrong with a record that was repaired, or could not be. */
final class RepairFaults {

  private final int width;

  RepairFaults(int width) {
    this.width = width;
  }

  Row mended(long line, Mended mended, boolean certain) {
    List<Fault> faults = new ArrayList<>();
    mended.departures().forEach((code, count) -> faults.add(fault(code, count, certain)));
    faults.addAll(Unclean.faults(mended.cells()));
    return new Row(line, mended.cells(), faults);
  }

  private Fault fault(Code code, int count, boolean certain) {
    return switch (code) {
      case STRAY_QUOTE -> QuoteFault.stray(count, certain);
      case MISSING_DELIMITER ->
          new Fault(code, some(count, "delimiter", "missing and put in"), certain);
      case SURPLUS_DELIMITER ->
          new Fault(code, some(count, "delimiter", "too many, left out or taken as text"), certain);
      default -> few(count, certain);
    };
  }

  private static String some(int count, String noun, String what) {
    return count + " " + noun + (count == 1 ? " " : "s ") + what;
  }

  private Fault few(int missing, boolean certain) {
    String message = missing + " of " + width + " cells missing at the end, taken as empty";
    return new Fault(Code.TOO_FEW_CELLS, message, certain);
  }

  /** For a row that lacks cells at its end, or has empty ones too many there. */
  Row fitted(long line, List<String> fitted, int cells, boolean certain) {
    String message = some(cells - width, "empty cell", "too many at the end, left out");
    Fault fault =
        cells < width ? few(width - cells, certain) : Fault.mended(Code.TOO_MANY_CELLS, message);
    return with(line, fitted, fault);
  }

  Row otherDelimiter(long line, Mended mended, String used, boolean certain) {
    String name = used.equals("\t") ? "tab" : used.equals(" ") ? "blank" : "'" + used + "'";
    String message = "the row is written with " + name + " between its cells";
    return with(line, mended.cells(), new Fault(Code.OTHER_DELIMITER, message, certain));
  }

  Row strays(long line, List<String> cells, int strays) {
    return with(line, cells, QuoteFault.stray(Math.max(1, strays), true));
  }

  /** For a row that no reading stands out for. */
  Row asItIs(long line, List<String> cells, int strays) {
    List<Fault> faults = new ArrayList<>();
    if (strays > 0) {
      faults.add(QuoteFault.stray(strays, false));
    }
    if (cells.size() != width) {
      Code code = cells.size() < width ? Code.TOO_FEW_CELLS : Code.TOO_MANY_CELLS;
      String message = some(cells.size(), "cell", "where the table has " + width);
      faults.add(Fault.open(code, message));
    }
    faults.addAll(Unclean.faults(cells));
    return new Row(line, cells, faults);
  }

  private static Row with(long line, List<String> cells, Fault fault) {
    List<Fault> faults = new ArrayList<>(List.of(fault));
    faults.addAll(Unclean.faults(cells));
    return new Row(line, cells, faults);
  }
}
