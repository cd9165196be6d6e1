package coldround.pages;

import coldround.rounds.Premises;
import coldround.rounds.RoundPlan;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** How pages about rounds say times, days and places. */
public final class RoundWords {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);

  private RoundWords() {}

  /** To the nearest minute, by the clock there: "07:40". */
  static String clock(Instant instant, ZoneId zone) {
    return CLOCK.format(instant.plusSeconds(30).truncatedTo(ChronoUnit.MINUTES).atZone(zone));
  }

  /** "Mon 30 Nov". */
  public static String day(LocalDate day) {
    return DAY.format(day).replace("Sept", "Sep");
  }

  static String site(Premises premises) {
    return premises.name().isEmpty() ? premises.code() : premises.name();
  }

  /** The break of a round, "12:07 to 12:37"; empty if it has none. */
  static String rest(RoundPlan.Round round) {
    return round.rest() == null
        ? ""
        : clock(round.rest().from(), round.zone())
            + " to "
            + clock(round.rest().to(), round.zone());
  }

  /** "45 min", "2 h 05". */
  static String minutes(double minutes) {
    long whole = Math.round(minutes);
    return whole < 60
        ? whole + " min"
        : String.format(Locale.ROOT, "%d h %02d", whole / 60, whole % 60);
  }
}
