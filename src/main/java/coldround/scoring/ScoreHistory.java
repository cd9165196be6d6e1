package coldround.scoring;

import java.time.LocalDate;
import java.util.List;

/** What scores were told of a unit, day by day. */
public interface ScoreHistory {

  /**
   * What one factor took.
   *
   * @param reasons codes of its reasons
   */
  record Factor(String factor, double weight, double lost, boolean known, List<String> reasons) {
    public Factor {
      reasons = List.copyOf(reasons);
    }

    public static Factor of(FactorScore score) {
      return new Factor(
          score.factor(),
          score.weight(),
          score.lost(),
          score.known(),
          score.reasons().stream().map(reason -> reason.code()).distinct().toList());
    }
  }

  /** The score that was told last on a day on which it changed. */
  record Entry(
      LocalDate day,
      double score,
      double low,
      double high,
      double completeness,
      List<Factor> factors) {
    public Entry {
      factors = List.copyOf(factors);
    }

    public static Entry of(Condition condition) {
      return new Entry(
          condition.asOf(),
          condition.score(),
          condition.low(),
          condition.high(),
          condition.completeness(),
          condition.factors().stream().map(Factor::of).toList());
    }
  }

  /**
   * @param before only days before this one; null for all
   * @return at most {@code limit} entries, newest first
   */
  List<Entry> entries(String unitId, LocalDate before, int limit);
}
