package coldround.benchmark;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Figures as a table of Markdown, those of the same program on each kind of store in one row. */
final class FigureTable {

  private static final String MISSED = " **not reached**";

  /**
   * @param command without the kind of store
   */
  private record Line(String command, String meaning, OptionalDouble goal) {}

  private final Map<Line, Map<Store.Kind, String>> cells = new LinkedHashMap<>();

  void add(Figure figure, Spread spread) {
    Store.Kind store = Store.Kind.in(figure.command());
    String command = store.off(figure.command());
    cells
        .computeIfAbsent(
            new Line(command, figure.meaning(), figure.goal()),
            line -> new EnumMap<>(Store.Kind.class))
        .put(store, cell(spread) + (figure.reached(spread.median()) ? "" : MISSED));
  }

  private static String cell(Spread spread) {
    return spread.rounds() == 1
        ? text(spread.median()) + " (once)"
        : "%s (%d: %s to %s)"
            .formatted(
                text(spread.median()),
                spread.rounds(),
                text(spread.least()),
                text(spread.greatest()));
  }

  private static String text(double value) {
    return String.format(Locale.ROOT, value >= 100 ? "%.0f" : value >= 10 ? "%.1f" : "%.2f", value);
  }

  @Override
  public String toString() {
    StringBuilder table =
        new StringBuilder("| command | figure | goal | H2, or no store | PostgreSQL |\n");
    table.append("|---|---|---|---|---|\n");
    cells.forEach(
        (line, its) ->
            table.append(
                "| `%s` | %s | %s | %s | %s |\n"
                    .formatted(
                        line.command(),
                        line.meaning(),
                        line.goal().isEmpty() ? "" : text(line.goal().getAsDouble()),
                        its.getOrDefault(Store.Kind.H2, ""),
                        its.getOrDefault(Store.Kind.POSTGRESQL, ""))));
    return table.toString();
  }
}
