package coldround.intake;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Opening hours in the syntax of OpenStreetMap, looked over for words and times that cannot be: a
 * slip is told here, where its cell is known.
 */
record HoursCell(TextCell any) implements CellReader {

  private static final Pattern TOKEN =
      Pattern.compile("\"[^\"]*\"|\\d{1,2}:\\d{2}|24/7|[A-Za-z]+|\\d+|[-,;:+|/\\[\\]()&\\s]");
  private static final Pattern TIME = Pattern.compile("(\\d{1,2}):(\\d{2})");
  private static final Set<String> WORDS =
      Set.of(
          "mo", "tu", "we", "th", "fr", "sa", "su", "ph", "sh", "jan", "feb", "mar", "apr", "may",
          "jun", "jul", "aug", "sep", "oct", "nov", "dec", "week", "day", "days", "easter", "dawn",
          "sunrise", "sunset", "dusk", "off", "closed", "open", "unknown");
  // hours past midnight run on to the next day: 22:00-26:00
  private static final int LATEST_MINUTE = 48 * 60;

  @Override
  public Object read(String text, Refusals refusals) {
    Object kept = any.read(text, refusals);
    String wrong = kept == null ? "" : wrong(text);
    if (!wrong.isEmpty()) {
      refusals.add(
          ProblemCode.NOT_HOURS,
          "'%s' in the hours cannot be read. Write them such as Mo-Fr 07:00-15:30; Sa 08:00-12:00."
              .formatted(RowProblem.shown(wrong)));
      return null;
    }
    return kept;
  }

  /** The first piece that cannot be; empty for none. */
  private static String wrong(String text) {
    Matcher token = TOKEN.matcher(text);
    int at = 0;
    boolean says = false;
    while (at < text.length()) {
      if (!token.find(at) || token.start() != at) {
        return text.substring(at);
      }
      if (!canBe(token.group())) {
        return token.group();
      }
      says |= Character.isLetterOrDigit(token.group().charAt(0));
      at = token.end();
    }
    return says ? "" : text;
  }

  private static boolean canBe(String token) {
    Matcher time = TIME.matcher(token);
    if (time.matches()) {
      int minutes = Integer.parseInt(time.group(2));
      return minutes < 60 && Integer.parseInt(time.group(1)) * 60 + minutes <= LATEST_MINUTE;
    }
    return !Character.isLetter(token.charAt(0)) || WORDS.contains(token.toLowerCase(Locale.ROOT));
  }
}
