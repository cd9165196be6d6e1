package coldround.upkeep;

import java.time.LocalDate;

/** The day on which something that grows evenly reaches its limit. */
final class Crossing {

  private Crossing() {}

  /**
   * @param today the day on which the value holds
   * @param value on that day
   * @param limit that it reaches
   * @param perDay growth a day, not below 0
   * @param notBefore day before which the crossing cannot have been; null for any
   * @return null when it never reaches the limit; a day in the past when it already has
   */
  static LocalDate day(
      LocalDate today, double value, double limit, double perDay, LocalDate notBefore) {
    if (perDay <= 0 && value < limit) {
      return null;
    }
    // without growth there is no telling when it was reached: as early as can be
    double days = perDay > 0 ? Math.floor((limit - value) / perDay) : -Far.DAYS;
    if (days > Far.DAYS) {
      return null;
    }
    LocalDate day = today.plusDays((long) Math.max(days, -Far.DAYS));
    return notBefore != null && day.isBefore(notBefore) ? notBefore : day;
  }

  /** Dates that far off are no dates. */
  private static final class Far {
    static final double DAYS = 36500;
  }
}
