package coldround.scoring;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The fleet as a list to look through. */
public interface FleetList {

  /** Ways to sort it; each ends with the unit's id, so that no two lines are equal. */
  enum Order {
    SCORE,
    DUE,
    NAME
  }

  /**
   * Where a line stands in every order; it stays a place when the line is gone.
   *
   * @param nextDue due date of the task to do first, null when nothing is due
   */
  record Place(
      double score, LocalDate nextDue, String customer, String site, String tag, String unitId) {

    private static final String BETWEEN = "\u001f";

    public static Place of(FleetLine line) {
      return new Place(
          line.score(), line.nextDue(), line.customer(), line.site(), line.tag(), line.unitId());
    }

    public String text() {
      String due = nextDue == null ? "" : nextDue.toString();
      return String.join(BETWEEN, Double.toString(score), due, customer, site, tag, unitId);
    }

    /**
     * @throws IllegalArgumentException or DateTimeException for a text that {@link #text} did not
     *     make
     */
    public static Place parse(String text) {
      String[] parts = text.split(BETWEEN, -1);
      if (parts.length != 6) {
        throw new IllegalArgumentException("not a place in the list");
      }
      LocalDate due = parts[1].isEmpty() ? null : LocalDate.parse(parts[1]);
      return new Place(Double.parseDouble(parts[0]), due, parts[2], parts[3], parts[4], parts[5]);
    }
  }

  /**
   * What is looked for; an empty field looks for everything.
   *
   * @param unit id or tag
   * @param text words that must all occur in the names, tag, maker, model, kind or refrigerant
   */
  record Search(
      String customer, String site, String unit, String kind, String refrigerant, String text) {
    public Search {
      customer = orEmpty(customer);
      site = orEmpty(site);
      unit = orEmpty(unit);
      kind = orEmpty(kind);
      refrigerant = orEmpty(refrigerant);
      text = orEmpty(text);
    }

    private static String orEmpty(String text) {
      return text == null ? "" : text.strip();
    }
  }

  /**
   * @param after place that the lines follow, null for the beginning
   * @return at most {@code limit} lines
   */
  List<FleetLine> lines(Search search, Order order, Place after, int limit);

  /**
   * Lines of a search and how many units it finds in all, at the price of as few looks through the
   * fleet as it takes.
   */
  record Found(List<FleetLine> lines, long count) {
    public Found {
      lines = List.copyOf(lines);
    }
  }

  /**
   * @param after place that the lines follow, null for the beginning
   * @return at most {@code limit} lines, and the count of all
   */
  Found find(Search search, Order order, Place after, int limit);

  Optional<FleetLine> line(String unitId);

  /** How many units the search finds. */
  long count(Search search);

  /** What occurs in the whole list, each in the order of the alphabet. */
  record Range(List<String> kinds, List<String> refrigerants) {
    public Range {
      kinds = List.copyOf(kinds);
      refrigerants = List.copyOf(refrigerants);
    }
  }

  Range range();
}
