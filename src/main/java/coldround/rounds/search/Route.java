package coldround.rounds.search;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One planned round, times in minutes.
 *
 * @param vehicle index of the vehicle in the problem
 * @param departs when it leaves its start place: as late as the earliest return allows
 * @param returns when it reaches its end place
 * @param visits the stops in order
 * @param restBegins when the break begins, on arriving at the next stop; empty if there is none
 * @param distance how far it drives
 * @param drivingMinutes how long it drives
 * @param waitingMinutes how long it waits for windows to open, the break not counted
 * @param cost what it costs
 */
public record Route(
    int vehicle,
    double departs,
    double returns,
    List<Visit> visits,
    OptionalDouble restBegins,
    double distance,
    double drivingMinutes,
    double waitingMinutes,
    CostSplit cost) {

  public Route {
    visits = List.copyOf(visits);
  }

  /** Indexes of the stops in order. */
  public List<Integer> stops() {
    return visits.stream().map(Visit::stop).toList();
  }
}
