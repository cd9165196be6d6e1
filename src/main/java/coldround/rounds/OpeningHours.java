package coldround.rounds;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Hours of the week as OpenStreetMap writes them, as far as a week knows them: weekdays and ranges
 * of weekdays, several spans a day, spans past midnight, {@code off}, {@code 24/7}; a later rule
 * replaces what an earlier one said of its days. What is said of public holidays ({@code PH}) holds
 * on the days that the caller names; school holidays ({@code SH}) are not known and passed over.
 */
public final class OpeningHours {

  private final Map<DayOfWeek, List<Hours>> week;

  /** Spans of a public holiday, null where they are those of its weekday. */
  private final List<Hours> holiday;

  OpeningHours(Map<DayOfWeek, List<Hours>> week, List<Hours> holiday) {
    this.holiday = holiday == null ? null : List.copyOf(holiday);
    this.week = new EnumMap<>(DayOfWeek.class);
    week.forEach((day, spans) -> this.week.put(day, List.copyOf(spans)));
  }

  /** Hours without end: what an empty text says of a site. */
  public static OpeningHours always() {
    Map<DayOfWeek, List<Hours>> week = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      week.put(day, List.of(Hours.ALL_DAY));
    }
    return new OpeningHours(week, null);
  }

  /**
   * @throws IllegalArgumentException for text that is not of the subset, with what is wrong
   */
  public static OpeningHours parse(String text) {
    return new HoursReader(text).read();
  }

  /** True when there is no open minute in any week. */
  public boolean neverOpen() {
    return week.values().stream().allMatch(List::isEmpty);
  }

  /** True when they say what holds on public holidays. */
  public boolean speakOfHolidays() {
    return holiday != null;
  }

  /** The spans that begin on that weekday, in order. */
  public List<Hours> spans(DayOfWeek day) {
    return week.getOrDefault(day, List.of());
  }

  /**
   * When it is open between the two midnights of a day, in order, joined where spans touch.
   *
   * @param zone whose clock the hours are by; a night of changing clocks is shorter or longer
   */
  public List<Span> on(LocalDate day, ZoneId zone) {
    return on(day, zone, Set.of());
  }

  /** The same where some days are public holidays. */
  public List<Span> on(LocalDate day, ZoneId zone, Set<LocalDate> holidays) {
    List<Span> open = new ArrayList<>();
    Span whole = new Span(at(day, 0, zone), at(day, Hours.DAY, zone));
    for (int back = 1; back >= 0; back--) {
      LocalDate begun = day.minusDays(back);
      boolean free = holiday != null && holidays.contains(begun);
      for (Hours hours : free ? holiday : spans(begun.getDayOfWeek())) {
        open.add(new Span(at(begun, hours.from(), zone), at(begun, hours.to(), zone)));
      }
    }
    return joined(open.stream().filter(span -> span.meets(whole)).map(whole::common).toList());
  }

  private static List<Span> joined(List<Span> spans) {
    List<Span> joined = new ArrayList<>();
    for (Span next : spans.stream().sorted(Comparator.comparing(Span::from)).toList()) {
      int last = joined.size() - 1;
      if (last >= 0 && !next.from().isAfter(joined.get(last).to())) {
        Instant to = joined.get(last).to();
        joined.set(last, new Span(joined.get(last).from(), next.to().isAfter(to) ? next.to() : to));
      } else {
        joined.add(next);
      }
    }
    return joined;
  }

  private static Instant at(LocalDate day, int minute, ZoneId zone) {
    return day.plusDays(minute / Hours.DAY)
        .atTime(LocalTime.ofSecondOfDay(minute % Hours.DAY * 60L))
        .atZone(zone)
        .toInstant();
  }
}
