package coldround.scoring;

import coldround.reason.Source;
import coldround.scoring.statistics.WeibullLife;
import java.util.OptionalDouble;

/**
 * How old a unit is and what life its class has.
 *
 * @param lifeClass row of service-life.csv
 * @param life distribution of the age at the end of life, in years
 * @param basis where the age comes from
 * @param ageYears age that is computed with; empty when nothing bounds it
 * @param leastYears least age that the evidence leaves open
 * @param mostYears greatest age that the evidence leaves open; infinity for no bound
 * @param lostShare share of such units that are gone by then
 * @param remainingYears mean residual life
 * @param source row that gave the life
 */
public record AgeState(
    String lifeClass,
    WeibullLife life,
    Basis basis,
    OptionalDouble ageYears,
    double leastYears,
    double mostYears,
    double lostShare,
    double remainingYears,
    Source source) {

  /** Evidence of the age, from best to least. */
  public enum Basis {
    INSTALLED,
    SERIAL_YEAR,
    /** Only the first visit or fault: the unit is at least that old. */
    FIRST_SEEN,
    NONE
  }
}
