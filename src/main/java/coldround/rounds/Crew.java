package coldround.rounds;

import coldround.rounds.search.Vehicle;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The technicians of an order as vehicles, one for each of their days. */
final class Crew {

  private final Order order;
  private final Network network;
  private final Travel travel;
  private final Shifts shifts;
  private final List<Note> notes;
  private final List<Shifts.Day> days = new ArrayList<>();

  /**
   * @param network to which their homes are added
   * @param notes to which those are added who cannot be planned
   */
  Crew(Order order, Network network, Travel travel, Shifts shifts, List<Note> notes) {
    this.order = order;
    this.network = network;
    this.travel = travel;
    this.shifts = shifts;
    this.notes = notes;
  }

  /** One for each day that a technician can work, in the order of {@link #days}. */
  List<Vehicle> vehicles() {
    List<Vehicle> vehicles = new ArrayList<>();
    for (Worker worker : order.workers()) {
      if (nowhere(worker.home(), "start", worker) || nowhere(worker.end(), "end", worker)) {
        continue;
      }
      int home = network.add(worker.home());
      int end = network.add(worker.end());
      for (Shifts.Day day : shifts.days(worker, order.days(), order.holidays())) {
        boolean out = isOut(worker, day);
        Instant earliest = out ? day.on().from() : order.now();
        if (earliest.isBefore(day.on().to())) {
          days.add(day);
          vehicles.add(shifts.vehicle(day, home, end, earliest));
        }
      }
    }
    if (vehicles.isEmpty()) {
      notes.add(new Note("no-technician", "plan", "no technician can work in these days."));
    }
    return vehicles;
  }

  private boolean nowhere(Place place, String what, Worker worker) {
    boolean nowhere = !place.located() && !travel.knows(place);
    if (nowhere) {
      String message =
          "is not planned: where the day %ss %s. Give coordinates.".formatted(what, place.fault());
      notes.add(new Note("no-coordinates", "technician " + worker.code(), message));
    }
    return nowhere;
  }

  /** True when the technician has left home already on that day. */
  private boolean isOut(Worker worker, Shifts.Day day) {
    return order.calls().stream()
        .filter(call -> call.kept() != null && call.kept().technician().equals(worker.code()))
        .anyMatch(call -> holds(day, call.kept()) && !call.kept().out().isAfter(order.now()));
  }

  /** True where the work is kept on that day of a technician. */
  static boolean holds(Shifts.Day day, Kept kept) {
    return kept.begins().atZone(day.worker().zone()).toLocalDate().equals(day.day());
  }

  /** The days of the vehicles. */
  List<Shifts.Day> days() {
    return days;
  }
}
