package coldround.benchmark;

import coldround.rounds.search.Matrix;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Rates;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Reads the team orienteering format of Chao, Golden and Wasil (1996): number of points n, of teams
 * m and longest way tmax, then x, y and score of each point; the first is the start, the last the
 * end. Points are numbered from 0 in the order of the file.
 */
final class OrienteeringReader {

  /** Distance counts this share of the least score in all, so that it only decides between ties. */
  private static final double TIE_BREAK = 0.5;

  private final Map<String, Double> limits = new HashMap<>();
  private final List<double[]> points = new ArrayList<>();

  private OrienteeringReader() {}

  static RoutingInstance read(List<String> lines, String name) {
    OrienteeringReader reader = new OrienteeringReader();
    for (int i = 0; i < lines.size(); i++) {
      reader.line(lines.get(i).trim(), i + 1);
    }
    return reader.instance(name);
  }

  private void line(String line, int number) {
    if (line.isEmpty()) {
      return;
    }
    String[] tokens = line.split("[\\s,;:=]+");
    if (tokens.length == 2 && Character.isLetter(tokens[0].charAt(0))) {
      limits.put(tokens[0].toLowerCase(Locale.ROOT), RoutingFile.number(tokens[1], number));
    } else if (tokens.length == 3) {
      points.add(
          new double[] {
            RoutingFile.number(tokens[0], number),
            RoutingFile.number(tokens[1], number),
            RoutingFile.number(tokens[2], number)
          });
    } else {
      throw new IllegalArgumentException(
          "line " + number + ": a point has x, y and score, a limit n, m or tmax and its value");
    }
  }

  private double limit(String name) {
    Double value = limits.get(name);
    if (value == null || value < 0) {
      throw new IllegalArgumentException(name + " is missing or below 0");
    }
    return value;
  }

  private RoutingInstance instance(String name) {
    int count = (int) limit("n");
    if (points.size() != count || count < 2) {
      throw new IllegalArgumentException(
          "n is " + count + " but there are " + points.size() + " points");
    }
    List<Integer> numbers = IntStream.range(1, count - 1).boxed().toList();
    List<Double> scores = numbers.stream().map(i -> points.get(i)[2]).toList();
    if (scores.stream().anyMatch(score -> score < 0)) {
      throw new IllegalArgumentException("a score is below 0");
    }
    return new RoutingInstance(
        name, RoutingInstance.Kind.ORIENTEERING, problem(numbers, scores), numbers, scores);
  }

  private Problem problem(List<Integer> numbers, List<Double> scores) {
    Matrix distances =
        Points.distances(
            points.stream().mapToDouble(p -> p[0]).toArray(),
            points.stream().mapToDouble(p -> p[1]).toArray());
    double longest = limit("tmax");
    int teams = (int) limit("m");
    double least = scores.stream().filter(s -> s > 0).mapToDouble(s -> s).min().orElse(1);
    double perDistance = TIE_BREAK * least / Math.max(1e-9, longest * teams);
    Shift shift = Shift.regular(0, longest);
    Rates rates = new Rates(0, perDistance, 0, 0);
    List<Vehicle> vehicles =
        IntStream.rangeClosed(1, teams)
            .mapToObj(t -> Vehicle.of("team " + t, 0, shift, rates).endingAt(points.size() - 1))
            .toList();
    List<Stop> stops =
        numbers.stream().map(i -> Stop.at("point " + i, i, 0).optional(scores.get(i - 1))).toList();
    return new Problem(vehicles, stops, distances, distances);
  }
}
