package coldround.rounds;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Hours of the simple kind, read apart from the planner. */
final class HoursByHand {

  private static final List<String> DAYS = List.of("mo", "tu", "we", "th", "fr", "sa", "su");

  private HoursByHand() {}

  /**
   * Spans of a weekday, 1 for Monday and 0 for a public holiday, in texts such as "Mo-Fr
   * 08:00-12:00,13:00-17:00; Sa off".
   */
  static List<LocalTime[]> spans(String text, int weekday) {
    List<LocalTime[]> spans = new ArrayList<>();
    for (String rule : text.toLowerCase(Locale.ROOT).split(";")) {
      String[] parts = rule.strip().split("\\s+", 2);
      if (names(parts[0], weekday)) {
        spans.clear();
        for (String span : parts[1].equals("off") ? new String[0] : parts[1].split(",")) {
          String[] ends = span.strip().split("-");
          spans.add(new LocalTime[] {LocalTime.parse(ends[0]), LocalTime.parse(ends[1])});
        }
      }
    }
    return spans;
  }

  private static boolean names(String days, int weekday) {
    for (String part : days.split(",")) {
      String[] ends = part.split("-");
      int first = DAYS.indexOf(ends[0]) + 1;
      int last = DAYS.indexOf(ends[ends.length - 1]) + 1;
      if (part.equals("ph") ? weekday == 0 : weekday > 0 && first <= weekday && weekday <= last) {
        return true;
      }
    }
    return false;
  }
}
