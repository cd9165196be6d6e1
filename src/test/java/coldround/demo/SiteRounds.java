package coldround.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The days on which a technician goes through the units of a site: one a quarter. */
final class SiteRounds {

  private final List<LocalDate> days = new ArrayList<>();

  SiteRounds(Place site, int numberOfSite) {
    Chance chance = new Chance("rounds of " + site.code());
    LocalDate day = Story.FIRST_DAY.plusDays(2 + 5L * numberOfSite);
    while (day.isBefore(Story.LAST_DAY)) {
      days.add(weekday(day));
      day = day.plusDays(91 + chance.whole(-5, 5));
    }
  }

  /** That day or the next Monday. */
  static LocalDate weekday(LocalDate day) {
    boolean weekend =
        day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
    return weekend ? weekday(day.plusDays(1)) : day;
  }

  boolean attends(Care care, LocalDate day) {
    int round = days.indexOf(day);
    return round >= 0 && care.attends(round);
  }
}
