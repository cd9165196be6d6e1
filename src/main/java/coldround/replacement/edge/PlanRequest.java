package coldround.replacement.edge;

import java.time.LocalDate;
import java.util.List;

/**
 * A plan that is asked for. What is left out is taken from the rule tables, and said in the answer.
 *
 * @param customers codes; one or several
 * @param horizon years, 1 to 20
 * @param firstYear calendar year that the plan begins with; the next one if not said
 * @param limit on replacements in each year; none if not said
 * @param limits for each year of the plan, in place of one limit
 * @param carryOver share of what is left of a limit that may be spent the year after, 0 to 1
 * @param discountRate in % a year
 * @param basis real, or nominal with an inflation
 * @param inflation in % a year
 * @param must units that must be replaced by the end of a year
 * @param mustNot units that must not be replaced before a year, or not at all
 * @param factors on the costs of the tables, to see what follows when they are other
 */
public record PlanRequest(
    List<String> customers,
    LocalDate asOf,
    Integer horizon,
    Integer firstYear,
    Amount limit,
    List<Amount> limits,
    Double carryOver,
    Amount discountRate,
    String basis,
    Amount inflation,
    List<Must> must,
    List<MustNot> mustNot,
    Long seed,
    Integer runs,
    Factors factors) {

  /** A value with its unit of measure, as everywhere. */
  public record Amount(Double value, String unit) {}

  /** Each 0.25 to 4; what is not said is 1. */
  public record Factors(Double price, Double faults, Double refrigerant, Double electricity) {}

  /** A unit that must be replaced in that year at the latest, by law or for safety. */
  public record Must(String unit, Integer by) {}

  /** A unit that is leased, say: not replaced before that year, or never when none is said. */
  public record MustNot(String unit, Integer before) {}
}
