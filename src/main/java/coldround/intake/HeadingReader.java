package coldround.intake;

import coldround.fleet.Kind;
import coldround.quantity.Measure;
import coldround.sheet.FormulaGuard;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the columns of the standard form in the header line of a file. */
public final class HeadingReader {

  private static final Pattern WITH_MEASURE =
      Pattern.compile("(?s)(.*\\S)\\s*[\\[(]\\s*([^\\])\\[(]*?)\\s*[\\])]");
  private static final int MOST_COLUMNS = 1000;

  private final Kind kind;
  private final List<Column> columns;
  private final CellRules rules;
  private final long line;
  private final Map<String, String> found = new HashMap<>();
  private final List<String> faults = new ArrayList<>();
  private final List<RowProblem> problems = new ArrayList<>();

  private HeadingReader(Kind kind, List<Column> columns, CellRules rules, long line) {
    this.kind = kind;
    this.columns = columns;
    this.rules = rules;
    this.line = line;
  }

  /**
   * @param columns those of the kind
   * @param line line of the file where the header starts
   * @throws UnreadableFile when a required column is missing, one stands twice, or a unit of
   *     measure does not fit
   */
  public static Heading read(
      Kind kind, List<String> header, long line, List<Column> columns, CellRules rules) {
    return new HeadingReader(kind, columns, rules, line).read(header);
  }

  private Heading read(List<String> header) {
    List<String> labels = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    List<Heading.Slot> slots = new ArrayList<>();
    int width = 0;
    for (int i = 0; i < header.size() && i < MOST_COLUMNS; i++) {
      String label = Cell.content(FormulaGuard.undo(header.get(i)));
      width = label.isEmpty() ? width : i + 1;
      if (!RejectedRows.isOwn(label)) {
        labels.add(label);
        places.add(i);
        slots.add(label.isEmpty() || isSource(label) ? null : slot(label));
      }
    }
    List<Heading.Made> made = made(labels, places, slots);
    checkComplete(labels);
    return new Heading(labels, places, slots, width, problems, made);
  }

  private boolean isSource(String label) {
    return rules.profile().derived(kind).stream()
        .anyMatch(one -> one.headers().contains(Profile.plain(label)));
  }

  /** The columns that the profile makes of those that are there. */
  private List<Heading.Made> made(
      List<String> labels, List<Integer> places, List<Heading.Slot> slots) {
    List<String> there = labels.stream().map(Profile::plain).toList();
    List<Heading.Made> made = new ArrayList<>();
    for (Profile.Derived one : rules.profile().derived(kind)) {
      List<Integer> sources = one.headers().stream().map(there::indexOf).toList();
      if (!sources.contains(-1)) {
        made.add(new Heading.Made(one, sources));
        for (String name : one.columns()) {
          Column column = named(name).orElseThrow();
          labels.add(labels.get(sources.get(0)));
          places.add(-1);
          checkOnce(column, labels.get(sources.get(0)));
          slots.add(new Heading.Slot(column, column.measure()));
        }
      }
    }
    return made;
  }

  private Heading.Slot slot(String label) {
    Matcher form = WITH_MEASURE.matcher(label);
    boolean bracketed = form.matches() && aliased(label).isEmpty();
    String name = bracketed ? form.group(1) : label;
    Optional<Column> column = column(name).or(() -> column(label));
    if (column.isEmpty()) {
      warn(label, ProblemCode.UNKNOWN_COLUMN, unknown(name));
      return null;
    }
    checkOnce(column.get(), label);
    return new Heading.Slot(
        column.get(), measure(column.get(), label, bracketed ? form.group(2) : ""));
  }

  private void checkOnce(Column column, String label) {
    String twin = found.putIfAbsent(column.name(), label);
    if (twin != null) {
      faults.add(
          "the columns '%s' and '%s' mean the same; leave one out"
              .formatted(RowProblem.shown(twin), RowProblem.shown(label)));
    }
  }

  /** A header that the profile names as a whole, such as "Discharge kPa (g)". */
  private Optional<Profile.Alias> aliased(String label) {
    return rules.profile().aliases(kind).stream().filter(one -> one.names(label)).findFirst();
  }

  private Optional<Column> column(String name) {
    return named(Profile.plain(name))
        .or(
            () ->
                rules.profile().aliases(kind).stream()
                    .filter(alias -> alias.fits(name))
                    .findFirst()
                    .flatMap(alias -> named(alias.column())));
  }

  private Optional<Column> named(String name) {
    return columns.stream().filter(column -> column.name().equals(name)).findFirst();
  }

  private Measure measure(Column column, String label, String bracket) {
    if (!column.type().hasMeasure()) {
      return null;
    }
    if (bracket.isEmpty()) {
      return rules.profile().measure(kind, column.name()).orElseGet(() -> assumed(column, label));
    }
    Optional<Measure> named = rules.measure(bracket).filter(column::accepts);
    if (named.isEmpty()) {
      faults.add(
          "'%s' is no unit of measure for %s; write %s or another unit of its kind"
              .formatted(RowProblem.shown(bracket), column.name(), column.header()));
    }
    return named.orElse(column.measure());
  }

  private Measure assumed(Column column, String label) {
    warn(
        label,
        ProblemCode.MEASURE_ASSUMED,
        "the header names no unit of measure; %1$s was taken. If that is wrong, write %2$s [unit]"
                .formatted(column.measure(), column.name())
            + " and import again.");
    return column.measure();
  }

  private String unknown(String name) {
    List<String> names = columns.stream().map(Column::name).toList();
    return "the column is not known and is ignored."
        + Nearest.to(Profile.plain(name), names).map(" Did you mean %s?"::formatted).orElse("");
  }

  private void warn(String label, ProblemCode code, String message) {
    problems.add(new RowProblem(line, label, "", code, message));
  }

  private void checkComplete(List<String> labels) {
    List<String> missing =
        columns.stream()
            .filter(Column::mustBeFilled)
            .map(Column::name)
            .filter(name -> !found.containsKey(name))
            .toList();
    if (!missing.isEmpty()) {
      faults.add("required columns are missing: " + String.join(", ", missing));
    }
    if (!faults.isEmpty()) {
      throw new UnreadableFile("wrong-header", message(labels));
    }
  }

  private String message(List<String> labels) {
    String expected = String.join(", ", columns.stream().map(Column::header).toList());
    return "The header in line %d does not fit a list of %s: %s. There is: %s. Expected are: %s."
        .formatted(line, kind.code(), String.join("; ", faults), there(labels), expected);
  }

  private static String there(List<String> labels) {
    List<String> said = labels.stream().filter(label -> !label.isEmpty()).limit(40).toList();
    return said.isEmpty()
        ? "nothing"
        : String.join(", ", said.stream().map(RowProblem::shown).toList());
  }
}
