package coldround.upkeep;

import coldround.reason.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts tasks on the days that are arranged for them. One that is booked keeps the day of its
 * booking, whatever the rules ask for since, unless safety or law asks for an earlier one.
 */
final class Arranging {

  static final String BOOKED = "booked";
  static final String TOO_LATE = "booked-too-late";

  private static final String KEPT = "Booked for {booked}: it keeps that day";
  private static final String LATE =
      "Booked for {booked}, but {what} asks for it by {date}: the booking is too late";

  private final UpkeepTables tables;
  private final Arrangements arrangements;
  private final LocalDate asOf;

  Arranging(UpkeepTables tables, Arrangements arrangements, LocalDate asOf) {
    this.tables = tables;
    this.arrangements = arrangements;
    this.asOf = asOf;
  }

  Task arranged(Task task) {
    Booking booking = arrangements.bookings().get(task.id());
    if (booking != null) {
      return booked(task, booking.start().toLocalDate());
    }
    Move move = arrangements.moves().get(task.id());
    return move != null && move.holdsFor(task)
        ? Levelling.moved(task, move, tables.limits().source(UpkeepLimit.TECHNICIAN_WEEK), asOf)
        : task;
  }

  private Task booked(Task task, LocalDate day) {
    Optional<TaskReason> binding =
        task.reasons().stream().filter(reason -> putsOff(reason, day)).findFirst();
    return binding.isPresent() ? tooLate(task, binding.get(), day) : kept(task, day);
  }

  private boolean putsOff(TaskReason reason, LocalDate booked) {
    return reason.date().isBefore(booked)
        && tables.binding().find(reason.reason().code()).isPresent();
  }

  private Task kept(Task task, LocalDate day) {
    Source source = new Source("booking", task.id(), "the scheduling system");
    TaskReason why =
        new TaskReason(day, UnitCase.reason(BOOKED, KEPT, source, "booked", day, "date", day));
    List<TaskReason> reasons = new ArrayList<>(task.reasons());
    reasons.add(0, why);
    return task.on(day, reasons, asOf);
  }

  /** The reason of safety or law decides the day; what is wrong with the booking stands next. */
  private Task tooLate(Task task, TaskReason binding, LocalDate booked) {
    BindingReasons.Binding row = tables.binding().find(binding.reason().code()).orElseThrow();
    TaskReason why =
        new TaskReason(
            booked,
            UnitCase.reason(
                TOO_LATE,
                LATE,
                row.source(),
                "booked",
                booked,
                "what",
                row.what(),
                "date",
                binding.date()));
    List<TaskReason> reasons = new ArrayList<>(task.reasons());
    reasons.remove(binding);
    reasons.add(0, why);
    reasons.add(0, binding);
    return task.on(binding.date(), reasons, asOf);
  }
}
