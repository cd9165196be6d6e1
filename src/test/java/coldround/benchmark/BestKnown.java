package coldround.benchmark;

import coldround.rounds.search.Goal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Best values known, by file name: those of a table {@code best_known.csv} (set, instance,
 * objective, vehicles, distance) and some for optional stops.
 */
final class BestKnown {

  /**
   * A best known value.
   *
   * @param vehicles its number of vehicles, 0 if not told
   * @param value its distance, score or profit
   */
  record Entry(int vehicles, double value) {
    @Override
    public String toString() {
      return (vehicles > 0 ? vehicles + " / " : "") + String.format(Locale.ROOT, "%.2f", value);
    }
  }

  /**
   * Scores of team orienteering: proved optimal by enumeration and integer programming except where
   * marked; they agree with Chao, Golden and Wasil (1996) but for p1.3.h, whose longest way is
   * printed rounded down in the file. Profits: proved optimal by exact solution.
   */
  private static final Map<String, Double> OPTIONAL_STOPS =
      Map.ofEntries(
          Map.entry("p1.2.b", 15.0),
          Map.entry("p1.2.c", 20.0),
          Map.entry("p1.2.d", 30.0),
          Map.entry("p1.2.e", 45.0),
          Map.entry("p1.2.f", 80.0),
          Map.entry("p1.2.g", 90.0),
          Map.entry("p1.2.h", 110.0),
          Map.entry("p1.3.h", 70.0),
          Map.entry("p1.4.h", 45.0),
          Map.entry("p2.2.a", 90.0),
          Map.entry("p2.2.b", 120.0),
          Map.entry("p2.2.c", 140.0),
          Map.entry("p2.2.d", 160.0),
          Map.entry("p2.2.k", 275.0),
          Map.entry("p2.3.a", 70.0),
          Map.entry("p2.3.k", 200.0),
          Map.entry("p2.4.k", 180.0),
          Map.entry("p3.2.a", 90.0),
          Map.entry("p3.3.j", 380.0),
          Map.entry("p3.4.j", 310.0),
          Map.entry("p4.2.a", 206.0),
          Map.entry("p7.2.a", 30.0),
          Map.entry("p7.4.j", 462.0),
          // heuristic scores of Chao, Golden and Wasil (1996), lower bounds
          Map.entry("p3.2.t", 800.0),
          Map.entry("p4.2.t", 1306.0),
          Map.entry("p5.2.j", 580.0),
          Map.entry("p6.2.j", 948.0),
          Map.entry("p7.2.t", 1179.0),
          Map.entry("p06-2-50", 33.879101),
          Map.entry("p06-3-50", 40.950514),
          Map.entry("p06-4-50", 45.434073));

  private final Map<String, Entry> entries = new HashMap<>();

  static BestKnown read(Path folder) throws IOException {
    BestKnown known = new BestKnown();
    OPTIONAL_STOPS.forEach(
        (name, value) -> known.entries.put(key(name, false), new Entry(0, value)));
    Path table = folder.resolve("best_known.csv");
    if (Files.isRegularFile(table)) {
      Files.readAllLines(table).stream().skip(1).forEach(known::row);
    }
    return known;
  }

  private static String key(String name, boolean vehiclesFirst) {
    return name.toLowerCase(Locale.ROOT) + (vehiclesFirst ? " vehicles first" : "");
  }

  private void row(String line) {
    String[] cells = line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)");
    if (cells.length == 5) {
      int vehicles = cells[3].isBlank() ? 0 : Integer.parseInt(cells[3].trim());
      Entry entry = new Entry(vehicles, Double.parseDouble(cells[4].trim()));
      entries.put(key(cells[1].trim(), cells[2].contains("vehicles")), entry);
    }
  }

  Entry of(Path file, Goal goal) {
    String name = file.getFileName().toString().replaceFirst("\\.(txt|vrp|tsp)$", "");
    return entries.get(key(name, goal == Goal.FEWEST_VEHICLES));
  }
}
