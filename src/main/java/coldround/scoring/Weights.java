package coldround.scoring;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Points that each factor can take: scoring/weights.csv. */
public final class Weights {

  private static final String FILE = "weights.csv";
  static final String AGE = "age";
  static final String REFRIGERANT = "refrigerant";
  static final String COIL = "coil";
  static final String REPEAT_FAULTS = "repeat-faults";

  /** The factors, in the order in which they are told. */
  public static final List<String> FACTORS = List.of(AGE, REFRIGERANT, COIL, REPEAT_FAULTS);

  private record Weight(String factor, double points, Source source) {}

  private final Map<String, Double> points;

  private Weights(Map<String, Double> points) {
    this.points = points;
  }

  public static Weights load(RuleTables tables) {
    Map<String, Double> points = new HashMap<>();
    tables
        .read(
            FILE,
            "factor",
            row ->
                new Weight(
                    row.oneOf("factor", Set.copyOf(FACTORS)),
                    row.number("weight", 0, 100),
                    row.source()))
        .forEach(weight -> points.put(weight.factor, weight.points));
    problem(points).ifPresent(message -> tables.problem(FILE, 0, "weight", message));
    return new Weights(points);
  }

  /**
   * Weights for a trial.
   *
   * @throws IllegalArgumentException when a factor is missing or unknown, or they do not add up to
   *     100
   */
  public static Weights of(Map<String, Double> points) {
    problem(points)
        .ifPresent(
            message -> {
              throw new IllegalArgumentException(message);
            });
    return new Weights(Map.copyOf(points));
  }

  private static Optional<String> problem(Map<String, Double> points) {
    if (!points.keySet().equals(Set.copyOf(FACTORS))) {
      return Optional.of("there must be one weight for each of " + FACTORS);
    }
    if (points.values().stream().anyMatch(weight -> !(weight >= 0))) {
      return Optional.of("a weight must not be below 0");
    }
    double sum = points.values().stream().mapToDouble(Double::doubleValue).sum();
    return Math.abs(sum - 100) > 1e-9
        ? Optional.of("the weights add up to " + sum + ", not 100")
        : Optional.empty();
  }

  public double of(String factor) {
    return points.get(factor);
  }
}
