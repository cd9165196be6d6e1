package coldround.field;

import coldround.fleet.Entry;
import coldround.fleet.Kind;
import coldround.fleet.Unit;
import coldround.intake.CellRules;
import coldround.intake.Column;
import coldround.intake.ColumnType;
import coldround.intake.Heading;
import coldround.intake.HeadingReader;
import coldround.intake.IntakeTables;
import coldround.intake.Profile;
import coldround.intake.RowProblem;
import coldround.intake.RowReading;
import coldround.intake.RowReading.Understood;
import coldround.sheet.FormulaGuard;
import coldround.sheet.Row;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Fills what was sent from the field into the standard form of lists and reads it from there, so
 * that a visit is held to the same rules whichever way it comes in.
 */
public final class VisitForm {

  /**
   * What came of it.
   *
   * @param entry null when there are problems
   */
  public record Filled(Entry entry, List<FieldProblem> problems) {
    public Filled {
      problems = List.copyOf(problems);
    }
  }

  private static final List<String> KEYS = List.of("customer", "site", "unit", "visit");
  private static final List<String> LISTS = List.of("work", "faults");

  private final IntakeTables tables;
  private final CellRules rules;
  private final Unit unit;
  private final FieldVisit visit;
  private final List<FieldProblem> problems = new ArrayList<>();

  private VisitForm(IntakeTables tables, LocalDate today, Unit unit, FieldVisit visit) {
    this.tables = tables;
    this.rules = tables.rules(Profile.STANDARD, today);
    this.unit = unit;
    this.visit = visit;
  }

  /**
   * The entry that a visit makes, or all that is wrong with it.
   *
   * @param today day beyond which a visit cannot lie
   * @param visit with a number
   */
  public static Filled fill(IntakeTables tables, LocalDate today, Unit unit, FieldVisit visit) {
    return new VisitForm(tables, today, unit, visit).fill();
  }

  private Filled fill() {
    Map<String, Object> said = new LinkedHashMap<>();
    Entry visitEntry = visitEntry();
    if (visitEntry != null) {
      said.putAll(visitEntry.said());
    }
    ReadingForm form = new ReadingForm(tables, rules);
    for (FieldReading reading : visit.readings()) {
      form.read(reading, visit.readings(), problems)
          .ifPresent(read -> said.put(reading.quantity() + " " + reading.part(), read));
    }
    return new Filled(problems.isEmpty() ? new Entry(0, said) : null, problems);
  }

  private Entry visitEntry() {
    Map<String, String> cells = cells();
    List<Column> columns = tables.columns(Kind.VISITS);
    Heading heading =
        HeadingReader.read(Kind.VISITS, List.copyOf(cells.keySet()), 0, columns, rules);
    List<String> guarded = cells.values().stream().map(FormulaGuard::guard).toList();
    Understood understood = new RowReading(Kind.VISITS, heading, rules).read(new Row(0, guarded));
    understood.problems().stream().filter(RowProblem::rejects).forEach(this::problem);
    return understood.entry();
  }

  private Map<String, String> cells() {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put("customer", unit.customer());
    cells.put("site", unit.site());
    cells.put("unit", unit.tag());
    cells.put("visit", visit.number());
    cells.put("date", visit.date());
    cells.put("technician", visit.technician());
    cells.put("purpose", visit.purpose());
    cells.put("work", String.join(";", visit.work()));
    cells.put("faults", String.join(";", visit.faults()));
    cells.put("note", visit.note());
    List<String> parts = parts();
    visit
        .findings()
        .forEach(
            (part, grade) -> {
              if (parts.contains(part)) {
                cells.put(part, grade);
              } else {
                problems.add(unknownPart(part, parts));
              }
            });
    return cells;
  }

  private List<String> parts() {
    return tables.columns(Kind.VISITS).stream()
        .filter(column -> column.type() == ColumnType.GRADE)
        .map(Column::name)
        .toList();
  }

  private static FieldProblem unknownPart(String part, List<String> parts) {
    return new FieldProblem(
        "/findings/" + pointer(part),
        "",
        "'%s' is no part that is graded. Known are: %s."
            .formatted(RowProblem.shown(part), String.join(", ", parts)));
  }

  /** A name as one step of a JSON pointer. */
  private static String pointer(String name) {
    return RowProblem.shown(name).replace("~", "~0").replace("/", "~1");
  }

  private void problem(RowProblem problem) {
    problems.add(new FieldProblem(path(problem), problem.value(), problem.message()));
  }

  private String path(RowProblem problem) {
    String column = problem.column();
    if (LISTS.contains(column)) {
      return "/" + column + place(column);
    }
    if (KEYS.contains(column)) {
      return column.equals("visit") ? "/visit" : "/unit";
    }
    return visit.findings().containsKey(column) ? "/findings/" + column : "/" + column;
  }

  /** The first code of a list that is not known, as a step of the path. */
  private String place(String column) {
    List<String> codes = column.equals("work") ? visit.work() : visit.faults();
    String list = tables.columns().find(Kind.VISITS, column).orElseThrow().list();
    for (int i = 0; i < codes.size(); i++) {
      if (tables.codes().find(list, codes.get(i).strip()).isEmpty()) {
        return "/" + i;
      }
    }
    return "";
  }
}
