package coldround.scoring;

import java.time.LocalDate;
import java.util.List;

/**
 * The condition score of one unit on a day.
 *
 * @param score 0 to 100, 100 as new: 100 less what the factors take
 * @param low score in the worst case that the evidence leaves open
 * @param high score in the best case
 * @param completeness share of the evidence that is there, 0 to 1, by weight
 */
public record Condition(
    LocalDate asOf,
    double score,
    double low,
    double high,
    double completeness,
    List<FactorScore> factors,
    List<Diagnostic> diagnostics,
    List<String> cautions) {

  public Condition {
    factors = List.copyOf(factors);
    diagnostics = List.copyOf(diagnostics);
    cautions = List.copyOf(cautions);
  }

  /** The condition that the factors make together. */
  public static Condition of(
      LocalDate asOf,
      double completeness,
      List<FactorScore> factors,
      List<Diagnostic> diagnostics,
      List<String> cautions) {
    return new Condition(
        asOf,
        hundredLess(factors.stream().mapToDouble(FactorScore::lost).sum()),
        hundredLess(factors.stream().mapToDouble(FactorScore::most).sum()),
        hundredLess(factors.stream().mapToDouble(FactorScore::least).sum()),
        completeness,
        factors,
        diagnostics,
        cautions);
  }

  private static double hundredLess(double points) {
    return FactorScore.tenths(Math.max(0, 100 - points));
  }
}
