package coldround.fleet;

import java.util.List;

/**
 * Who does the rounds.
 *
 * @param latitude of the place where the day starts and ends, null if unknown
 * @param hours working hours in opening-hours syntax, empty if unknown
 * @param daysOff planned days without work, in the order they were given
 */
public record Technician(
    String code,
    String name,
    Double latitude,
    Double longitude,
    String hours,
    List<String> competences,
    List<DaySpan> daysOff) {
  public Technician {
    competences = List.copyOf(competences);
    daysOff = List.copyOf(daysOff);
  }
}
