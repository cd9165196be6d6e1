package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/** Reads scoring/saturation.csv and the source of each curve in scoring/saturation-sources.csv. */
final class SaturationTable {

  private static final String FILE = "saturation.csv";
  private static final String SOURCES = "saturation-sources.csv";
  private static final Set<String> QUALITIES = Set.of("reference", "fitted");

  private record Node(String refrigerant, double temperatureC, double bubbleKpa, double dewKpa) {}

  private record Origin(String refrigerant, String quality, double uncertaintyK, Source source) {}

  private SaturationTable() {}

  static Map<String, SaturationCurve> read(RuleTables tables, List<Refrigerant> refrigerants) {
    Map<String, List<Node>> nodes = new LinkedHashMap<>();
    for (Node node : tables.read(FILE, "point", SaturationTable::node)) {
      nodes.computeIfAbsent(node.refrigerant, key -> new ArrayList<>()).add(node);
    }
    Map<String, Origin> origins = new HashMap<>();
    tables
        .read(SOURCES, "refrigerant", SaturationTable::origin)
        .forEach(origin -> origins.put(origin.refrigerant, origin));
    Map<String, Refrigerant> known = new HashMap<>();
    refrigerants.forEach(refrigerant -> known.put(refrigerant.designation(), refrigerant));
    Map<String, SaturationCurve> curves = new HashMap<>();
    nodes.forEach(
        (name, line) -> {
          String problem = problem(known.get(name), origins.get(name), line);
          if (problem.isEmpty()) {
            curves.put(name, curve(known.get(name), origins.get(name), line));
          } else {
            tables.problem(FILE, 0, "refrigerant", name + " " + problem);
          }
        });
    origins.keySet().stream()
        .filter(name -> !nodes.containsKey(name))
        .forEach(name -> tables.problem(SOURCES, 0, "refrigerant", name + " has no curve"));
    return curves;
  }

  private static Node node(TableRow row) {
    double bubble = row.number("bubble_kpa", 0.001, 20000);
    double dew = row.number("dew_kpa", 0.001, 20000);
    if (dew > bubble) {
      throw new IllegalArgumentException("the dew pressure is above the bubble pressure");
    }
    double celsius = row.number("temperature_c", -150, 400);
    return new Node(row.required("refrigerant"), celsius, bubble, dew);
  }

  private static Origin origin(TableRow row) {
    return new Origin(
        row.required("refrigerant"),
        row.oneOf("quality", QUALITIES),
        row.number("uncertainty_k", 0, 10),
        row.source());
  }

  private static String problem(Refrigerant refrigerant, Origin origin, List<Node> line) {
    if (refrigerant == null) {
      return "is not in " + RefrigerantTable.FILE;
    }
    if (origin == null) {
      return "has no row in " + SOURCES;
    }
    if (line.size() < 2) {
      return "needs two points or more";
    }
    for (int i = 1; i < line.size(); i++) {
      if (!rises(line.get(i - 1), line.get(i))) {
        return "does not rise at " + line.get(i).temperatureC + " degC; rows go from cold to warm";
      }
    }
    return "";
  }

  private static boolean rises(Node before, Node node) {
    return node.temperatureC > before.temperatureC
        && node.bubbleKpa > before.bubbleKpa
        && node.dewKpa > before.dewKpa;
  }

  private static SaturationCurve curve(Refrigerant refrigerant, Origin origin, List<Node> line) {
    double[] celsius = column(line, Node::temperatureC);
    return new SaturationCurve(
        refrigerant.designation(),
        origin.quality,
        origin.uncertaintyK,
        refrigerant.criticalC(),
        origin.source,
        new VapourPressureLine(celsius, column(line, Node::bubbleKpa)),
        new VapourPressureLine(celsius, column(line, Node::dewKpa)));
  }

  private static double[] column(List<Node> line, ToDoubleFunction<Node> value) {
    return line.stream().mapToDouble(value).toArray();
  }
}
