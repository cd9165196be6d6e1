package coldround.field.edge;

import coldround.http.Problem;
import coldround.upkeep.Booking;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A booking as it is sent in JSON. */
@Schema(name = "Booking", requiredProperties = "start")
record BookingBody(
    @Schema(
            description = "When it begins, with the offset from UTC",
            examples = "2026-12-01T09:00:00-05:00")
        String start,
    @Schema(description = "Code of the technician") String technician,
    @Schema(description = "What the scheduling system calls it") String reference) {

  private static final int LONGEST_TECHNICIAN = 120;
  private static final int LONGEST_REFERENCE = 200;

  /**
   * @throws Problem 422 with all that is wrong
   */
  Booking read(String taskId) {
    List<Problem.FieldError> errors = new ArrayList<>();
    OffsetDateTime when = when(errors);
    String who = text("/technician", technician, LONGEST_TECHNICIAN, errors);
    String theirs = text("/reference", reference, LONGEST_REFERENCE, errors);
    if (!errors.isEmpty()) {
      throw new Problem(
          422,
          "wrong-booking",
          "The booking cannot be taken as it is",
          errors.get(0).field() + ": " + errors.get(0).message(),
          errors);
    }
    return new Booking(taskId, when, who, theirs);
  }

  private OffsetDateTime when(List<Problem.FieldError> errors) {
    try {
      OffsetDateTime when = OffsetDateTime.parse(start == null ? "" : start.strip());
      if (when.getYear() >= 1900 && when.getYear() <= 9999) {
        return when;
      }
    } catch (DateTimeException e) {
      // told below
    }
    errors.add(
        new Problem.FieldError(
            "/start",
            start,
            "is a moment with its offset from UTC, such as 2026-12-01T09:00:00-05:00"));
    return null;
  }

  private static String text(String field, String sent, int most, List<Problem.FieldError> errors) {
    String text = sent == null ? "" : sent.strip();
    if (text.length() > most || text.chars().anyMatch(Character::isISOControl)) {
      errors.add(
          new Problem.FieldError(field, null, "is a line of at most " + most + " characters"));
    }
    return text;
  }
}
