package coldround.fleet;

import java.util.List;

/**
 * Who does the rounds.
 *
 * @param latitude of the place where the day starts and ends, null if unknown
 * @param hours working hours in opening-hours syntax, empty if unknown
 */
public record Technician(
    String code,
    String name,
    Double latitude,
    Double longitude,
    String hours,
    List<String> competences) {
  public Technician {
    competences = List.copyOf(competences);
  }
}
