package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import java.time.LocalDate;

/** An interval counted from the last time a task was done, or from what stands in for it. */
final class Counted {

  private static final String NOTHING =
      "Nothing on record says when this was last done; it is usual every {days} in {surroundings}"
          + " surroundings, so it is due soon";

  private final UnitCase unit;
  private final Interval interval;
  private final int days;
  private final LocalDate done;
  private final LocalDate from;

  private Counted(UnitCase unit, Interval interval, int days) {
    this.unit = unit;
    this.interval = interval;
    this.days = days;
    this.done = unit.done(interval.task());
    this.from = unit.countedFrom(done);
  }

  static Counted from(UnitCase unit, Interval interval, int days) {
    return new Counted(unit, interval, days);
  }

  Ask ask(String code, String since, String never) {
    boolean seen = done != null || unit.record().firstVisit() != null;
    LocalDate date = from == null ? unit.soon() : from.plusDays(days);
    // a unit that nobody ever attended is not overdue by the years since it was installed
    if (!seen && date.isBefore(unit.soon())) {
      date = unit.soon();
      return ask("nothing-on-record", NOTHING, date, null);
    }
    LocalDate longest = from == null ? null : from.plusDays(interval.longestDays(surroundings()));
    if (from == null) {
      return ask("nothing-on-record", NOTHING, date, null);
    }
    return ask(code, done == null ? never : since, date, longest);
  }

  private String surroundings() {
    return unit.surroundings();
  }

  private Ask ask(String code, String template, LocalDate date, LocalDate notAfter) {
    String where = surroundings().isEmpty() ? "unknown" : surroundings();
    Object[] facts = {
      "from",
      from == null ? "nothing" : from,
      "surroundings",
      where,
      "days",
      new Quantity(days, Measure.DAY),
      "date",
      date
    };
    return Ask.by(
        interval.task(), date, notAfter, UnitCase.reason(code, template, interval.source(), facts));
  }
}
