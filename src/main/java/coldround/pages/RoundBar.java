package coldround.pages;

import coldround.rounds.RoundPlan;
import coldround.rounds.RoundPlan.Round;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One technician's day as a bar of time. Places and lengths are in percent of the bar.
 *
 * @param parts from left to right
 * @param from clock at the left end
 * @param to clock at the right end
 * @param told the whole bar in one sentence, for those who do not see it
 */
public record RoundBar(List<Part> parts, String from, String to, String told) {

  /**
   * A stretch of time.
   *
   * @param what drive, work or rest
   */
  public record Part(String what, String from, String length) {}

  public RoundBar {
    parts = List.copyOf(parts);
  }

  /**
   * @param begin instant at the left end, the same for all bars of a day
   * @param end instant at the right end
   */
  static RoundBar of(Round round, Instant begin, Instant end) {
    double whole = Math.max(1, Duration.between(begin, end).toSeconds());
    List<Part> parts = new ArrayList<>();
    for (RoundPlan.Stop stop : round.stops()) {
      Instant left = stop.arrives().minusMillis(Math.round(stop.leg().minutes() * 60_000));
      add(parts, "drive", left, stop.arrives(), begin, whole);
      add(parts, "work", stop.begins(), stop.leaves(), begin, whole);
    }
    Instant last = round.stops().get(round.stops().size() - 1).leaves();
    add(parts, "drive", last, round.returns(), begin, whole);
    if (round.rest() != null) {
      add(parts, "rest", round.rest().from(), round.rest().to(), begin, whole);
    }
    String told =
        "%s: out %s, back %s, %s driving, %s work"
            .formatted(
                round.name(),
                RoundWords.clock(round.leaves(), round.zone()),
                RoundWords.clock(round.returns(), round.zone()),
                RoundWords.minutes(round.drivingMinutes()),
                RoundWords.minutes(round.workMinutes()));
    return new RoundBar(
        parts, RoundWords.clock(begin, round.zone()), RoundWords.clock(end, round.zone()), told);
  }

  private static void add(
      List<Part> parts, String what, Instant from, Instant to, Instant begin, double whole) {
    double start = 100 * Duration.between(begin, from).toSeconds() / whole;
    double length = 100 * Duration.between(from, to).toSeconds() / whole;
    if (length > 0) {
      parts.add(new Part(what, number(start), number(length)));
    }
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
