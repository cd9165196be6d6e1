package coldround.rounds.search;

/**
 * What it costs beyond travel to give a stop to a vehicle, as when its day is later than wished.
 */
@FunctionalInterface
public interface AssignmentPrice {

  /** Every stop may go to any vehicle at the same price. */
  AssignmentPrice NONE = (stop, vehicle) -> 0;

  /** The price, or infinity if the vehicle may not serve the stop. */
  double of(int stop, int vehicle);
}
