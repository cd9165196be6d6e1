package coldround.rounds.search;

import java.util.List;

/**
 * A routing problem: which vehicle serves which stops, in what order, at the lowest cost.
 *
 * @param vehicles the rounds that can be driven
 * @param stops the calls to make
 * @param distance distances between places
 * @param minutes driving minutes between places
 * @param assignment what it costs to give a stop to a vehicle
 */
public record Problem(
    List<Vehicle> vehicles,
    List<Stop> stops,
    Matrix distance,
    Matrix minutes,
    AssignmentPrice assignment) {

  public Problem {
    vehicles = List.copyOf(vehicles);
    stops = List.copyOf(stops);
    if (distance.size() != minutes.size()) {
      throw new IllegalArgumentException(
          "distances of " + distance.size() + " places but minutes of " + minutes.size());
    }
    for (Vehicle vehicle : vehicles) {
      requirePlace(vehicle.name(), vehicle.start(), distance);
      requirePlace(vehicle.name(), vehicle.end(), distance);
    }
    for (Stop stop : stops) {
      requirePlace(stop.name(), stop.place(), distance);
      requireVehicle(stop, vehicles.size());
    }
  }

  public Problem(List<Vehicle> vehicles, List<Stop> stops, Matrix distance, Matrix minutes) {
    this(vehicles, stops, distance, minutes, AssignmentPrice.NONE);
  }

  private static void requirePlace(String name, int place, Matrix matrix) {
    if (place < 0 || place >= matrix.size()) {
      throw new IllegalArgumentException(
          name + " is at place " + place + ", but the matrices have " + matrix.size() + " places");
    }
  }

  private static void requireVehicle(Stop stop, int vehicles) {
    if (stop.pinnedTo().isPresent()
        && (stop.pinnedTo().getAsInt() < 0 || stop.pinnedTo().getAsInt() >= vehicles)) {
      throw new IllegalArgumentException(
          stop.name() + " is pinned to vehicle " + stop.pinnedTo().getAsInt() + " of " + vehicles);
    }
  }
}
