package coldround.rounds;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.temporal.TemporalAdjusters;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Public holidays: scoring/holidays.csv. A row is a date of each year, or the nth weekday of a
 * month, counted from its end below 0.
 */
final class Holidays {

  private static final String FILE = "holidays.csv";
  private static final Set<String> WEEKDAYS =
      Arrays.stream(DayOfWeek.values()).map(Enum::name).collect(Collectors.toSet());
  private static final int LATEST = 5;

  private record Rule(Month month, int day, DayOfWeek weekday, int nth) {
    LocalDate in(int year) {
      LocalDate first = LocalDate.of(year, month, 1);
      return weekday == null
          ? first.withDayOfMonth(day)
          : first.with(TemporalAdjusters.dayOfWeekInMonth(nth, weekday));
    }
  }

  private final List<Rule> rules;

  private Holidays(List<Rule> rules) {
    this.rules = rules;
  }

  /** Reads the table; problems are left with the tables. */
  static Holidays load(RuleTables tables) {
    return new Holidays(tables.read(FILE, "holiday", Holidays::rule));
  }

  private static Rule rule(TableRow row) {
    row.source();
    Month month = Month.of((int) row.number("month", 1, 12));
    if (row.text("weekday").isEmpty()) {
      // the length it has every year
      return new Rule(month, (int) row.number("day", 1, month.minLength()), null, 0);
    }
    int nth = (int) row.number("nth", -LATEST, LATEST);
    if (nth == 0) {
      throw new IllegalArgumentException("nth counts from 1, or from -1 for the last");
    }
    return new Rule(month, 0, DayOfWeek.valueOf(row.oneOf("weekday", WEEKDAYS)), nth);
  }

  Set<LocalDate> between(LocalDate from, LocalDate to) {
    Set<LocalDate> days = new TreeSet<>();
    for (int year = from.getYear(); year <= to.getYear(); year++) {
      for (Rule rule : rules) {
        LocalDate day = rule.in(year);
        if (!day.isBefore(from) && !day.isAfter(to)) {
          days.add(day);
        }
      }
    }
    return days;
  }
}
