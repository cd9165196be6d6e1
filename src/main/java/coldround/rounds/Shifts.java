package coldround.rounds;

import coldround.rounds.search.Rates;
import coldround.rounds.search.Rest;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Vehicle;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Turns the working hours of technicians into days that can be planned. */
final class Shifts {

  /**
   * One technician on one day.
   *
   * @param on the working time, without overtime, breaks included
   * @param rest longest time off between two parts of the day, null for none
   */
  record Day(Worker worker, LocalDate day, Span on, Span rest) {}

  private final RoundRules rules;
  private final Prices prices;
  private final Clockwork clockwork;
  private final List<Note> notes;

  Shifts(RoundRules rules, Prices prices, Clockwork clockwork, List<Note> notes) {
    this.rules = rules;
    this.prices = prices;
    this.clockwork = clockwork;
    this.notes = notes;
  }

  /** The days of a technician; none, and a note why, when the hours do not tell them. */
  List<Day> days(Worker worker, List<LocalDate> span, Set<LocalDate> holidays) {
    String subject = "technician " + worker.code();
    if (worker.hours().isBlank()) {
      notes.add(
          new Note(
              "no-hours", subject, "has no working hours and is not planned: give the hours."));
      return List.of();
    }
    try {
      OpeningHours hours = OpeningHours.parse(worker.hours());
      List<Day> days = new ArrayList<>();
      for (LocalDate day : span) {
        List<Span> parts =
            worker.daysOff().contains(day) ? List.of() : hours.on(day, worker.zone(), holidays);
        if (!parts.isEmpty()) {
          days.add(day(worker, day, parts));
        }
      }
      if (days.isEmpty()) {
        boolean off = worker.daysOff().stream().anyMatch(span::contains);
        String message =
            "does not work on any day of the plan"
                + (off ? ": hours and days off leave none." : ".");
        notes.add(new Note("no-working-day", subject, message));
      }
      return days;
    } catch (IllegalArgumentException e) {
      notes.add(new Note("hours-unreadable", subject, "is not planned: " + e.getMessage()));
      return List.of();
    }
  }

  private static Day day(Worker worker, LocalDate day, List<Span> parts) {
    Span rest = null;
    for (int i = 1; i < parts.size(); i++) {
      Span off = new Span(parts.get(i - 1).to(), parts.get(i).from());
      rest = rest == null || off.minutes() > rest.minutes() ? off : rest;
    }
    Span on = new Span(parts.get(0).from(), parts.get(parts.size() - 1).to());
    return new Day(worker, day, on, rest);
  }

  /**
   * The day as the search sees it.
   *
   * @param home index of the place where it starts
   * @param end index of the place where it ends
   * @param earliest nothing before this
   */
  Vehicle vehicle(Day day, int home, int end, Instant earliest) {
    Instant begin = day.on.from().isBefore(earliest) ? earliest : day.on.from();
    double begins = clockwork.minute(begin);
    double ends = clockwork.minute(day.on.to());
    Shift shift = new Shift(begins, ends, ends + rules.minutes(Figure.OVERTIME_MOST));
    Rates rates =
        new Rates(0, prices.perKm(), prices.labourPerMinute(), prices.overtimePerMinute());
    return new Vehicle(
        day.worker.code() + " " + day.day,
        home,
        end,
        shift,
        rates,
        rest(day, begins),
        day.worker.skills(),
        Double.POSITIVE_INFINITY);
  }

  private Rest rest(Day day, double begins) {
    if (day.rest != null) {
      double off = clockwork.minute(day.rest.from());
      double shift = rules.minutes(Figure.BREAK_SHIFT);
      return rest(day.rest.minutes(), off - shift, off + shift, begins);
    }
    if (day.on.minutes() < rules.minutes(Figure.BREAK_FROM)) {
      return Rest.NONE;
    }
    double from = clockwork.minute(day.on.from());
    return rest(
        rules.minutes(Figure.BREAK),
        from + rules.minutes(Figure.BREAK_EARLIEST),
        from + rules.minutes(Figure.BREAK_LATEST),
        begins);
  }

  /** A break whose time has passed when the plan begins has been taken. */
  private static Rest rest(double minutes, double earliest, double latest, double begins) {
    return begins > latest ? Rest.NONE : new Rest(minutes, Math.max(earliest, begins), latest);
  }

  /** Names of competences for a person to read. */
  static String told(Set<String> skills) {
    return String.join(", ", skills.stream().sorted().toList());
  }
}
