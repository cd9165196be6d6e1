package coldround.rounds.edge;

import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.rounds.ByHand;
import coldround.rounds.RoundPlan;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;

/**
 * A stop to be moved.
 *
 * @param stop its id
 * @param technician code; left out for the one who has it
 * @param day ISO 8601; left out for the day it is on
 * @param position in the order of that day, from 1; left out for where it costs least
 */
public record MoveBody(String stop, String technician, String day, Integer position) {

  /**
   * What is wanted of that plan.
   *
   * @throws Problem 400 that names every wrong field
   */
  ByHand.Move read(RoundPlan plan) {
    List<FieldError> errors = new ArrayList<>();
    RoundPlan.Round now = stop == null ? null : ByHand.round(plan, stop);
    if (now == null) {
      errors.add(new FieldError("stop", stop, "is the id of a stop of this plan"));
    }
    LocalDate wanted = now == null ? plan.from() : now.day();
    try {
      wanted = day == null || day.isEmpty() ? wanted : LocalDate.parse(day);
    } catch (DateTimeParseException e) {
      errors.add(new FieldError("day", day, "is a day such as " + plan.from()));
    }
    if (position != null && position < 1) {
      String range = "is 1 for the first stop of the day, or left out for where it costs least";
      errors.add(new FieldError("position", position.toString(), range));
    }
    if (!errors.isEmpty()) {
      throw Problem.badFields(errors);
    }
    String who = technician == null || technician.isEmpty() ? now.technician() : technician;
    return new ByHand.Move(stop, who, wanted, position == null ? ByHand.CHEAPEST : position);
  }
}
