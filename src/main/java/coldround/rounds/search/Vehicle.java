package coldround.rounds.search;

import java.util.Set;

/**
 * What makes one round: one technician on one day.
 *
 * @param name how answers call it
 * @param start place of the matrices where the round starts
 * @param end place where it ends
 * @param shift its hours
 * @param rates its costs
 * @param rest its break
 * @param skills what it can do
 * @param capacity how much demand it can take
 */
public record Vehicle(
    String name,
    int start,
    int end,
    Shift shift,
    Rates rates,
    Rest rest,
    Set<String> skills,
    double capacity) {

  public Vehicle {
    skills = Set.copyOf(skills);
  }

  /** A vehicle without break, skills and limit of demand. */
  public static Vehicle of(String name, int place, Shift shift, Rates rates) {
    return new Vehicle(
        name, place, place, shift, rates, Rest.NONE, Set.of(), Double.POSITIVE_INFINITY);
  }

  public Vehicle withRest(Rest taken) {
    return new Vehicle(name, start, end, shift, rates, taken, skills, capacity);
  }

  public Vehicle withSkills(Set<String> known) {
    return new Vehicle(name, start, end, shift, rates, rest, known, capacity);
  }

  public Vehicle withCapacity(double limit) {
    return new Vehicle(name, start, end, shift, rates, rest, skills, limit);
  }

  public Vehicle endingAt(int place) {
    return new Vehicle(name, start, place, shift, rates, rest, skills, capacity);
  }
}
