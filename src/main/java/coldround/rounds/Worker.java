package coldround.rounds;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Set;

/**
 * Who drives.
 *
 * @param home where the day starts
 * @param end where it ends
 * @param hours working hours in opening-hours syntax; empty if unknown
 * @param zone whose clock the hours are by
 * @param skills competences
 * @param daysOff days without work, whatever the hours say
 */
public record Worker(
    String code,
    String name,
    Place home,
    Place end,
    String hours,
    ZoneId zone,
    Set<String> skills,
    Set<LocalDate> daysOff) {

  public Worker {
    end = end == null ? home : end;
    skills = Set.copyOf(skills);
    daysOff = Set.copyOf(daysOff);
  }

  /** Somebody whose day ends where it starts. */
  public Worker(
      String code,
      String name,
      Place home,
      String hours,
      ZoneId zone,
      Set<String> skills,
      Set<LocalDate> daysOff) {
    this(code, name, home, home, hours, zone, skills, daysOff);
  }
}
