package coldround.benchmark;

import coldround.rounds.search.Goal;
import coldround.rounds.search.Plan;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * {@code rounds-table FOLDER SECONDS [PATTERN]}: plans every file below a folder whose path matches
 * the pattern, and prints the table instance, vehicles, distance, best known, gap, seconds with the
 * mean of each set. The best known values come from {@code best_known.csv} in the folder and from
 * {@link BestKnown}.
 */
final class RoundsTable {

  private final BestKnown known;
  private final double seconds;
  private final Map<String, List<Double>> gaps = new TreeMap<>();
  private int infeasible;
  private int planned;

  private RoundsTable(BestKnown known, double seconds) {
    this.known = known;
    this.seconds = seconds;
  }

  static void run(String... arguments) throws Exception {
    if (arguments.length < 2 || arguments.length > 3) {
      throw new IllegalArgumentException("rounds-table FOLDER SECONDS [PATTERN]");
    }
    Path folder = Path.of(arguments[0]);
    Pattern pattern = Pattern.compile(arguments.length == 3 ? arguments[2] : ".");
    RoundsTable table = new RoundsTable(BestKnown.read(folder), Rounds.seconds(arguments[1]));
    System.out.println("| instance | vehicles | distance | best known | gap % | seconds |");
    System.out.println("|---|---|---|---|---|---|");
    for (Path file : files(folder, pattern)) {
      table.plan(folder.relativize(file).toString(), file);
    }
    table.means();
  }

  private static List<Path> files(Path folder, Pattern pattern) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .filter(file -> file.toString().matches(".*\\.(txt|vrp|tsp)"))
          .filter(file -> pattern.matcher(folder.relativize(file).toString()).find())
          .sorted()
          .toList();
    }
  }

  private void plan(String path, Path file) throws IOException {
    RoutingInstance instance = RoutingFile.read(file);
    long begin = System.nanoTime();
    Goal goal = instance.publishedGoal();
    Plan plan = Rounds.plan(instance, goal, seconds);
    double took = (System.nanoTime() - begin) * 1e-9;
    boolean feasible = Rounds.feasible(instance, plan);
    planned++;
    infeasible += feasible ? 0 : 1;
    BestKnown.Entry best = known.of(file, goal);
    String target = best == null ? "-" : best.toString();
    String gap = best == null ? "-" : gap(path, instance, plan, best);
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %.2f%s | %s | %s | %.1f |%n",
        instance.name(),
        plan.routes().size(),
        instance.objective(plan),
        feasible ? "" : " (infeasible)",
        target,
        gap,
        took);
  }

  private String gap(String path, RoutingInstance instance, Plan plan, BestKnown.Entry best) {
    double reached = instance.objective(plan);
    double gap = 100 * (reached - best.value()) / best.value();
    gap = instance.higherIsBetter() ? -gap : gap;
    String set = path.contains("/") ? path.substring(0, path.indexOf('/')) : ".";
    gaps.computeIfAbsent(set, s -> new ArrayList<>()).add(gap);
    int more = best.vehicles() > 0 ? plan.routes().size() - best.vehicles() : 0;
    boolean counts = instance.publishedGoal() == Goal.FEWEST_VEHICLES && more != 0;
    return String.format(
        Locale.ROOT, "%.2f%s", gap, counts ? " (vehicles %+d)".formatted(more) : "");
  }

  private void means() throws IOException {
    Map<String, Object> means = new LinkedHashMap<>();
    gaps.forEach(
        (set, all) -> {
          double mean = all.stream().mapToDouble(Double::doubleValue).average().orElse(0);
          double worst = all.stream().mapToDouble(Double::doubleValue).max().orElse(0);
          means.put(set, Math.round(mean * 1000) / 1000.0);
          System.out.printf(
              Locale.ROOT,
              "mean of %s: %.3f %% over %d, worst %.2f %%%n",
              set,
              mean,
              all.size(),
              worst);
        });
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("planned", planned);
    figures.put("infeasible", infeasible);
    figures.put("seconds", seconds);
    figures.put("meanGapPercent", means);
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }
}
