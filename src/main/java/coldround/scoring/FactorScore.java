package coldround.scoring;

import coldround.reason.Reason;
import java.util.List;

/**
 * What one factor takes away from a unit's score. Points are rounded to a tenth, so that the sum
 * can be checked by hand.
 *
 * @param factor row of scoring/weights.csv, such as age
 * @param weight points the factor can take at most
 * @param lost points it takes: at the expected value where the truth is not known
 * @param least points it would take in the best case that the evidence leaves open
 * @param most points it would take in the worst case
 * @param known false when the factor rests on an expected value instead of evidence
 */
public record FactorScore(
    String factor,
    double weight,
    double lost,
    double least,
    double most,
    boolean known,
    List<Reason> reasons) {

  /**
   * @throws IllegalArgumentException unless 0 ≤ least ≤ lost ≤ most ≤ weight
   */
  public FactorScore {
    if (!(0 <= least && least <= lost && lost <= most && most <= weight)) {
      throw new IllegalArgumentException(
          factor + " loses " + lost + " of " + weight + ", between " + least + " and " + most);
    }
    reasons = List.copyOf(reasons);
  }

  /**
   * @param lostShare expected share of the weight that is lost, 0 to 1
   * @param leastShare share in the best case
   * @param mostShare share in the worst case
   */
  public static FactorScore of(
      String factor,
      double weight,
      double lostShare,
      double leastShare,
      double mostShare,
      boolean known,
      List<Reason> reasons) {
    return new FactorScore(
        factor,
        weight,
        tenths(weight * lostShare),
        tenths(weight * leastShare),
        tenths(weight * mostShare),
        known,
        reasons);
  }

  static double tenths(double points) {
    return Math.round(points * 10) / 10.0;
  }
}
