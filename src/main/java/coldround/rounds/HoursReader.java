package coldround.rounds;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one text of opening hours, piece by piece. */
final class HoursReader {

  private static final Pattern PIECE =
      Pattern.compile("\"[^\"]*\"|24/7|\\d{1,2}:\\d{2}|[A-Za-z]+|[-–,;+]|\\S");
  private static final Pattern TIME = Pattern.compile("(\\d{1,2}):(\\d{2})");
  private static final List<String> DAYS = List.of("mo", "tu", "we", "th", "fr", "sa", "su");
  private static final Set<String> HOLIDAYS = Set.of("ph", "sh");
  private static final int LATEST = 2 * Hours.DAY;

  private final String text;
  private final List<String> pieces = new ArrayList<>();
  private final Map<DayOfWeek, List<Hours>> week = new EnumMap<>(DayOfWeek.class);
  private List<Hours> onHolidays;
  private int at;

  HoursReader(String text) {
    this.text = text;
    Matcher piece = PIECE.matcher(text);
    while (piece.find()) {
      if (!piece.group().startsWith("\"")) {
        pieces.add(piece.group().replace('–', '-').toLowerCase(Locale.ROOT));
      }
    }
  }

  OpeningHours read() {
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("the hours are empty");
    }
    boolean adds = false;
    while (at < pieces.size()) {
      rule(adds);
      adds = at < pieces.size() && accept(",");
      if (!adds && at < pieces.size() && !accept(";")) {
        throw refused(peek());
      }
    }
    return new OpeningHours(week, onHolidays);
  }

  /** One rule; after a comma it adds to the days it names, else it replaces what they had. */
  private void rule(boolean adds) {
    Set<String> holidays = new HashSet<>();
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    if (accept("24/7")) {
      days = EnumSet.allOf(DayOfWeek.class);
    } else {
      selector(days, holidays);
    }
    List<Hours> spans = spans();
    if (holidays.contains("ph")) {
      List<Hours> said = new ArrayList<>(adds && onHolidays != null ? onHolidays : List.of());
      said.addAll(spans);
      onHolidays = said;
    }
    if (days.isEmpty() && holidays.isEmpty()) {
      days = EnumSet.allOf(DayOfWeek.class);
    }
    for (DayOfWeek day : days) {
      List<Hours> said = new ArrayList<>(adds ? week.getOrDefault(day, List.of()) : List.of());
      said.addAll(spans);
      week.put(day, said);
    }
  }

  private void selector(Set<DayOfWeek> days, Set<String> holidays) {
    while (at < pieces.size() && (DAYS.contains(peek()) || HOLIDAYS.contains(peek()))) {
      String first = pieces.get(at++);
      if (HOLIDAYS.contains(first)) {
        holidays.add(first);
      } else {
        range(DAYS.indexOf(first), accept("-") ? lastDay() : DAYS.indexOf(first), days);
      }
      if (!daysGoOn()) {
        break;
      }
      at++;
    }
  }

  private boolean daysGoOn() {
    return at + 1 < pieces.size()
        && peek().equals(",")
        && (DAYS.contains(pieces.get(at + 1)) || HOLIDAYS.contains(pieces.get(at + 1)));
  }

  private int lastDay() {
    String last = at < pieces.size() ? pieces.get(at++) : "";
    if (!DAYS.contains(last)) {
      throw refused(last);
    }
    return DAYS.indexOf(last);
  }

  private static void range(int first, int last, Set<DayOfWeek> days) {
    for (int day = first; ; day = (day + 1) % DAYS.size()) {
      days.add(DayOfWeek.of(day + 1));
      if (day == last) {
        return;
      }
    }
  }

  private List<Hours> spans() {
    if (accept("off") || accept("closed")) {
      return List.of();
    }
    List<Hours> spans = new ArrayList<>();
    while (at < pieces.size() && TIME.matcher(peek()).matches()) {
      spans.add(span());
      boolean another =
          at + 1 < pieces.size()
              && peek().equals(",")
              && TIME.matcher(pieces.get(at + 1)).matches();
      at += another ? 1 : 0;
    }
    accept("open");
    return spans.isEmpty() ? List.of(Hours.ALL_DAY) : spans;
  }

  private Hours span() {
    int from = minute();
    if (!accept("-")) {
      throw refused(at < pieces.size() ? peek() : "a time without an end");
    }
    int to = minute();
    int end = to <= from ? to + Hours.DAY : to;
    try {
      return new Hours(from, end);
    } catch (IllegalArgumentException e) {
      throw refused(pieces.get(at - 1));
    }
  }

  private int minute() {
    String piece = at < pieces.size() ? pieces.get(at++) : "";
    Matcher time = TIME.matcher(piece);
    if (!time.matches()) {
      throw refused(piece);
    }
    int minutes = Integer.parseInt(time.group(2));
    int minute = Integer.parseInt(time.group(1)) * 60 + minutes;
    if (minutes > 59 || minute > LATEST) {
      throw refused(piece);
    }
    return minute;
  }

  private String peek() {
    return pieces.get(at);
  }

  private boolean accept(String piece) {
    boolean there = at < pieces.size() && peek().equals(piece);
    at += there ? 1 : 0;
    return there;
  }

  private IllegalArgumentException refused(String piece) {
    return new IllegalArgumentException(
        "'%s' in the hours '%s' cannot be planned with. Weekdays, times, off and 24/7 can, such as Mo-Fr 07:00-15:30; Sa off."
            .formatted(piece, text));
  }
}
