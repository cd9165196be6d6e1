package coldround.upkeep.edge;

import coldround.feed.Change;
import coldround.fleet.UnitIds;
import coldround.upkeep.Booking;
import coldround.upkeep.Completion;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.time.OffsetDateTime;

/** What the feed says when something happened to a task that changed none of its reasons. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TaskNotice(
    String id, UnitId unit, String task, String state, BookingView booking, Done completion) {

  record UnitId(String id) {}

  /** When the task will be done. */
  record BookingView(OffsetDateTime start, String technician, String reference) {
    static BookingView of(Booking booking) {
      return booking == null
          ? null
          : new BookingView(booking.start(), booking.technician(), booking.reference());
    }
  }

  /** The visit that did it. */
  record Done(String visit, LocalDate date) {
    static Done of(Completion completion) {
      return completion == null ? null : new Done(completion.visit(), completion.completed());
    }
  }

  static final String BOOKED = "booked";

  /**
   * @param booking null for none
   * @param completion null for none
   */
  static Change change(
      String what,
      String id,
      long unitId,
      String task,
      String state,
      Booking booking,
      Completion completion) {
    TaskNotice notice =
        new TaskNotice(
            id,
            new UnitId(UnitIds.text(unitId)),
            task,
            state,
            BookingView.of(booking),
            Done.of(completion));
    return new Change("coldround.task." + what, id, notice);
  }
}
