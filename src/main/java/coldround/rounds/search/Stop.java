package coldround.rounds.search;

import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * One call at one place.
 *
 * @param name how answers call it
 * @param place its place in the matrices
 * @param serviceMinutes how long the work takes
 * @param windows when the work may begin; one of them must hold
 * @param skills what the vehicle must be able to do, all of them
 * @param demand how much of a vehicle's capacity it takes
 * @param priceLeftOut what leaving it out costs; infinite means it must be served
 * @param pinnedTo index of the only vehicle that may serve it, as one already booked or begun
 */
public record Stop(
    String name,
    int place,
    double serviceMinutes,
    List<Window> windows,
    Set<String> skills,
    double demand,
    double priceLeftOut,
    OptionalInt pinnedTo) {

  public Stop {
    windows = List.copyOf(windows);
    skills = Set.copyOf(skills);
    if (!(priceLeftOut >= 0)) {
      throw new IllegalArgumentException(
          "stop " + name + ": the price of leaving it out must be 0 or more, not " + priceLeftOut);
    }
    if (!(demand >= 0)) {
      throw new IllegalArgumentException(
          "stop " + name + ": the demand must be 0 or more, not " + demand);
    }
  }

  /** A stop that must be served at any time by anyone. */
  public static Stop at(String name, int place, double serviceMinutes) {
    return new Stop(
        name,
        place,
        serviceMinutes,
        List.of(Window.ALWAYS),
        Set.of(),
        0,
        Double.POSITIVE_INFINITY,
        OptionalInt.empty());
  }

  public Stop within(Window... spans) {
    return new Stop(
        name, place, serviceMinutes, List.of(spans), skills, demand, priceLeftOut, pinnedTo);
  }

  public Stop needing(Set<String> required) {
    return new Stop(name, place, serviceMinutes, windows, required, demand, priceLeftOut, pinnedTo);
  }

  public Stop withDemand(double amount) {
    return new Stop(name, place, serviceMinutes, windows, skills, amount, priceLeftOut, pinnedTo);
  }

  /** The same stop, to be left out if serving it costs more than this. */
  public Stop optional(double price) {
    return new Stop(name, place, serviceMinutes, windows, skills, demand, price, pinnedTo);
  }

  public Stop pinned(int vehicle) {
    return new Stop(
        name,
        place,
        serviceMinutes,
        windows,
        skills,
        demand,
        priceLeftOut,
        OptionalInt.of(vehicle));
  }

  /** True if leaving it out has no price. */
  public boolean mandatory() {
    return Double.isInfinite(priceLeftOut);
  }
}
