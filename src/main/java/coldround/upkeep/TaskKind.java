package coldround.upkeep;

import coldround.reason.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One kind of upkeep task: a row of scoring/tasks.csv.
 *
 * @param code as in answers, such as condenser-coil-cleaning
 * @param name as a person would say it
 * @param minutes usual time on the unit
 * @param skill competence it needs at least: electrical, refrigerant or empty for none
 * @param kinds kinds of unit that have it
 * @param daysBefore how long before its due date doing it makes sense
 * @param daysAfter how long after its due date it may be done
 * @param season true when it is better done before the hot months
 * @param doneWork work that counts as doing it
 * @param doneFindings parts whose grading counts as doing it
 * @param doneReadings quantities whose reading counts as doing it
 * @param donePurposes purposes of a visit that count as doing it
 * @param tools to bring
 * @param materials to bring
 * @param cautions situations of scoring/cautions.csv
 */
public record TaskKind(
    String code,
    String name,
    int minutes,
    String skill,
    KindSet kinds,
    int daysBefore,
    int daysAfter,
    boolean season,
    List<String> doneWork,
    List<String> doneFindings,
    List<String> doneReadings,
    List<String> donePurposes,
    List<String> tools,
    List<String> materials,
    List<String> cautions,
    Source source) {

  /**
   * @throws IllegalArgumentException when it takes no time or nothing ever counts as doing it
   */
  public TaskKind {
    if (minutes <= 0 || daysBefore < 0 || daysAfter < 0) {
      throw new IllegalArgumentException("minutes must be above 0 and days not below 0");
    }
    if (doneWork.isEmpty()
        && doneFindings.isEmpty()
        && doneReadings.isEmpty()
        && donePurposes.isEmpty()) {
      throw new IllegalArgumentException("nothing counts as doing " + code);
    }
  }

  /** What counts as doing it, for whoever did something else. */
  public String counts() {
    List<String> ways = new ArrayList<>();
    ways.add(way("work ", doneWork));
    ways.add(way("a grade of ", doneFindings));
    ways.add(way("a reading of ", doneReadings));
    ways.add(way("a visit with purpose ", donePurposes));
    return ways.stream().filter(way -> !way.isEmpty()).collect(Collectors.joining(", or "));
  }

  private static String way(String what, List<String> codes) {
    return codes.isEmpty() ? "" : what + String.join(" or ", codes);
  }
}
