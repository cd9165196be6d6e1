package coldround.rounds;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The tables of rounds: round-costs.csv, travel.csv, competences.csv, round-law.csv, holidays.csv.
 */
public final class RoundRules {

  private static final String FIGURES = "round-costs.csv";
  private static final Set<String> WHEN = Set.of("skill", "refrigerant", "safety");
  private static final double MINUTES_A_DAY = 24 * 60;

  private record Value(String row, Quantity quantity, Source source) {}

  private record Need(String when, String is, String competence) {}

  private final Map<Figure, Value> figures = new EnumMap<>(Figure.class);
  private final Roads roads;
  private final List<Need> needs;
  private final Set<String> lawful;
  private final Holidays holidays;

  private RoundRules(RuleTables tables) {
    Map<String, Value> rows =
        tables.read(FIGURES, "figure", RoundRules::value).stream()
            .collect(Collectors.toMap(Value::row, value -> value));
    for (Figure figure : Figure.values()) {
      if (rows.containsKey(figure.row())) {
        figures.put(figure, rows.get(figure.row()));
      } else {
        tables.problem(FIGURES, 0, "figure", "the row '" + figure.row() + "' is missing");
      }
    }
    roads = Roads.load(tables);
    holidays = Holidays.load(tables);
    needs = tables.read("competences.csv", "need", RoundRules::need);
    lawful = Set.copyOf(tables.read("round-law.csv", "reason", row -> row.required("reason")));
  }

  /** Reads the tables; problems are left with them. */
  public static RoundRules load(RuleTables tables) {
    return new RoundRules(tables);
  }

  private static Value value(TableRow row) {
    Quantity quantity = row.quantity("value", "measure");
    if (quantity.value() < 0) {
      throw new IllegalArgumentException("value must not be below 0");
    }
    return new Value(row.required("figure"), quantity, row.source());
  }

  private static Need need(TableRow row) {
    return new Need(row.oneOf("when", WHEN), row.required("is"), row.required("competence"));
  }

  /** Public holidays of the table within a span of days. */
  public Set<LocalDate> holidays(LocalDate from, LocalDate to) {
    return holidays.between(from, to);
  }

  public Roads roads() {
    return roads;
  }

  /** In the measure of its row. */
  public double amount(Figure figure) {
    return figures.get(figure).quantity.value();
  }

  /** A span of time in minutes. */
  public double minutes(Figure figure) {
    return figures.get(figure).quantity.to(Measure.DAY).value() * MINUTES_A_DAY;
  }

  double km(Figure figure) {
    return figures.get(figure).quantity.to(Measure.KILOMETRE).value();
  }

  public int days(Figure figure) {
    return (int) Math.round(figures.get(figure).quantity.to(Measure.DAY).value());
  }

  Source source(Figure figure) {
    return figures.get(figure).source;
  }

  /** True when a task with a reason of that code has a last day by law. */
  public boolean lawful(String reason) {
    return lawful.contains(reason);
  }

  /**
   * The competences that a task asks for.
   *
   * @param skill of the task; a task without one is done without opening anything
   * @param refrigerant designation, empty if unknown
   * @param safety ASHRAE 34 group, empty if unknown
   */
  public Set<String> competences(String skill, String refrigerant, String safety) {
    Map<String, String> said = Map.of("skill", skill, "refrigerant", refrigerant, "safety", safety);
    return skill.isEmpty()
        ? Set.of()
        : needs.stream()
            .filter(need -> need.is.equals(said.get(need.when)))
            .map(Need::competence)
            .collect(Collectors.toUnmodifiableSet());
  }
}
