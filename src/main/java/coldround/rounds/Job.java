package coldround.rounds;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;

/**
 * One piece of work on one unit.
 *
 * @param task id that stays the same until it is done
 * @param site "customer/site"
 * @param unit id of the unit
 * @param tag name of the unit at its site
 * @param kind what is done, such as condenser-coil-cleaning
 * @param skills competences it needs, all of them
 * @param earliest first day on which it makes sense
 * @param latest last day on which it should be done
 * @param lawful last day by law, null where no law asks for it
 * @param savesPerDay money that each day after the due date is expected to cost
 * @param reasons the governing one first
 */
public record Job(
    String task,
    String site,
    String unit,
    String tag,
    String kind,
    int minutes,
    Set<String> skills,
    LocalDate earliest,
    LocalDate due,
    LocalDate latest,
    LocalDate lawful,
    double savesPerDay,
    List<Why> reasons) {

  /** The kind of what was put into a plan by hand: no upkeep task stands behind it. */
  public static final String EMERGENCY = "emergency";

  /**
   * @throws IllegalArgumentException unless it takes some time and costs nothing to have waited
   */
  public Job {
    if (minutes <= 0 || !(savesPerDay >= 0)) {
      throw new IllegalArgumentException("minutes must be above 0, savings not below 0");
    }
    skills = Set.copyOf(skills);
    reasons = List.copyOf(reasons);
  }

  /** Days of waiting from the first day of a plan to another one that come after the due date. */
  double daysLate(LocalDate from, LocalDate day) {
    return daysAfter(due.isAfter(from) ? due : from, day);
  }

  /** The same after the last day by law. */
  double daysUnlawful(LocalDate from, LocalDate day) {
    return lawful == null ? 0 : daysAfter(lawful.isAfter(from) ? lawful : from, day);
  }

  private static double daysAfter(LocalDate start, LocalDate day) {
    return Math.max(0, ChronoUnit.DAYS.between(start, day));
  }
}
