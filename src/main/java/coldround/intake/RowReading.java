package coldround.intake;

import coldround.fleet.Entry;
import coldround.fleet.Kind;
import coldround.sheet.Fault;
import coldround.sheet.FormulaGuard;
import coldround.sheet.Row;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes the entries of one file from its rows. */
public final class RowReading {

  /**
   * A row as it was understood.
   *
   * @param cells as they stood in the file, under the labels of the heading
   * @param said columns as far as they could be read
   * @param entry the same; null when the row is rejected
   */
  public record Understood(
      long line,
      List<String> cells,
      Map<String, Object> said,
      Entry entry,
      List<RowProblem> problems) {}

  private static final String ERASES = "-";

  private final Kind kind;
  private final Heading heading;
  private final CellReader[] readers;
  private final LongReading longReading;

  /** For a file with that heading. */
  public RowReading(Kind kind, Heading heading, CellRules rules) {
    this.kind = kind;
    this.heading = heading;
    this.longReading = new LongReading(rules);
    this.readers = new CellReader[heading.slots().size()];
    for (int i = 0; i < readers.length; i++) {
      Heading.Slot slot = heading.slots().get(i);
      readers[i] = slot == null ? null : CellReaders.reader(slot.column(), slot.measure(), rules);
    }
  }

  public Understood read(Row row) {
    return new OneRow(row).read();
  }

  private final class OneRow {
    private final Row row;
    private final List<RowProblem> problems = new ArrayList<>(0);
    private final Map<String, Object> said = new LinkedHashMap<>();
    private boolean rejected;

    OneRow(Row row) {
      this.row = row;
    }

    Understood read() {
      row.faults().forEach(this::faultOfRow);
      List<String> cells = cells();
      for (int i = 0; i < readers.length && row.isReliable(); i++) {
        if (readers[i] != null) {
          readCell(i, cells.get(i));
        }
      }
      checkTogether();
      Entry entry = rejected ? null : new Entry(row.line(), said);
      return new Understood(row.line(), cells, said, entry, problems);
    }

    /** What the reader of the file found; cells that it does not rely on say nothing. */
    private void faultOfRow(Fault fault) {
      ProblemCode code = fault.mended() ? ProblemCode.MENDED_ROW : ProblemCode.BROKEN_ROW;
      problem("", "", code, fault.message() + ".");
    }

    private List<String> cells() {
      List<String> cells = new ArrayList<>(readers.length);
      for (int place : heading.places()) {
        if (place >= 0) {
          cells.add(place < row.cells().size() ? FormulaGuard.undo(row.cells().get(place)) : "");
        }
      }
      for (Heading.Made made : heading.made()) {
        List<String> sources =
            made.sources().stream().map(at -> Cell.content(cells.get(at))).toList();
        cells.addAll(made.how().parts(sources));
      }
      checkCount();
      return cells;
    }

    private void checkCount() {
      int there = row.cells().size();
      int expected = heading.width();
      if (there < expected) {
        problem(
            "",
            "",
            ProblemCode.TOO_FEW_CELLS,
            "%d cells under %d columns; the last columns are taken as empty."
                .formatted(there, expected));
      }
      for (int i = expected; i < there; i++) {
        if (!row.cells().get(i).isBlank()) {
          problem(
              "",
              row.cells().get(i),
              ProblemCode.TOO_MANY_CELLS,
              "%d cells under %d columns. A cell that holds the delimiter needs quotes around it."
                  .formatted(there, expected));
          return;
        }
      }
    }

    private void readCell(int i, String raw) {
      Column column = heading.slots().get(i).column();
      String text = Cell.content(raw);
      if (text.isEmpty() || text.equals(ERASES)) {
        silentOrErased(i, column, text, raw);
        return;
      }
      Object value =
          readers[i].read(text, (code, message) -> problem(label(i), raw, code, message));
      if (value != null) {
        said.put(column.name(), value);
      }
    }

    private void silentOrErased(int i, Column column, String text, String raw) {
      if (column.mustBeFilled()) {
        boolean empty = text.isEmpty();
        problem(
            label(i),
            raw,
            empty ? ProblemCode.MISSING : ProblemCode.NOT_ERASABLE,
            empty
                ? column.name() + " must be filled, such as " + column.example() + "."
                : column.name() + " cannot be erased. Fill it.");
      } else if (!text.isEmpty()) {
        said.put(column.name(), Entry.ERASED);
      }
    }

    private String label(int i) {
      return heading.labels().get(i);
    }

    private void checkTogether() {
      if (rejected) {
        return;
      }
      if (kind == Kind.READINGS) {
        longReading.assemble(said, this::problemIn);
      } else if (kind == Kind.FAULTS) {
        checkRepair();
      }
    }

    private void checkRepair() {
      LocalDate repaired = DateCell.day(said.get("repaired"));
      LocalDate failed = DateCell.day(said.get("date"));
      if (repaired != null && failed != null && repaired.isBefore(failed)) {
        problemIn(
            "repaired",
            ProblemCode.OUT_OF_RANGE,
            "the repair on %s lies before the failure on %s. Mend one of the days."
                .formatted(repaired, failed));
      }
    }

    private void problemIn(String column, ProblemCode code, String message) {
      int index = heading.indexOf(column);
      int place = index < 0 ? Integer.MAX_VALUE : heading.places().get(index);
      place = place < 0 ? Integer.MAX_VALUE : place;
      String raw = place < row.cells().size() ? row.cells().get(place) : "";
      problem(heading.label(column), raw, code, message);
    }

    private void problem(String column, String value, ProblemCode code, String message) {
      problems.add(new RowProblem(row.line(), column, value, code, message));
      rejected |= code.rejects();
    }
  }
}
