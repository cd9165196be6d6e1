package coldround.upkeep;

import java.util.Map;

/**
 * What has been arranged for tasks beyond what the rules ask for, by the id of the task.
 *
 * @param bookings by the scheduling system
 * @param moves out of weeks over capacity
 */
public record Arrangements(Map<String, Booking> bookings, Map<String, Move> moves) {

  public static final Arrangements NONE = new Arrangements(Map.of(), Map.of());

  public Arrangements {
    bookings = Map.copyOf(bookings);
    moves = Map.copyOf(moves);
  }
}
