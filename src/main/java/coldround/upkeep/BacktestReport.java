package coldround.upkeep;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How a plan made from the first part of the record fared against the rest of it.
 *
 * @param planned day from which nothing is known to the plan beforehand
 * @param until last day that is looked at
 * @param units units that were in use
 * @param lockouts recorded high-head lockouts in that span, by date
 * @param cleanings planned cleanings that fell due in it, by due date
 */
public record BacktestReport(
    LocalDate planned,
    LocalDate until,
    int units,
    List<Lockout> lockouts,
    List<PlannedCleaning> cleanings) {

  /**
   * One recorded lockout.
   *
   * @param due day on which a cleaning was due by the plan that held; null for none
   * @param leadDays from the day on which the plan said so, and the cleaning was due, to the
   *     lockout; below 0 when the cleaning was due only after it
   */
  public record Lockout(String unitId, LocalDate date, LocalDate due, long leadDays) {
    public boolean foreseen() {
      return due != null && !due.isAfter(date);
    }
  }

  /** What the coil was like when the planned cleaning fell due. */
  public enum Verdict {
    /** Graded dirty, well above its clean split, or the unit locked out. */
    NEEDED,
    /** Graded clean or light, or near its clean split. */
    NEEDLESS,
    /** Nobody looked before the coil was cleaned or the span ended. */
    UNKNOWN
  }

  /** One cleaning that the plan asked for. */
  public record PlannedCleaning(String unitId, LocalDate due, String rule, Verdict verdict) {}

  public BacktestReport {
    lockouts = List.copyOf(lockouts);
    cleanings = List.copyOf(cleanings);
  }

  public long foreseen() {
    return lockouts.stream().filter(Lockout::foreseen).count();
  }

  /** Median days between due date and lockout of those foreseen; empty when there are none. */
  public OptionalDouble medianLeadDays() {
    long[] days =
        lockouts.stream().filter(Lockout::foreseen).mapToLong(Lockout::leadDays).sorted().toArray();
    int half = days.length / 2;
    if (days.length == 0) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        days.length % 2 == 1 ? days[half] : (days[half - 1] + days[half]) / 2.0);
  }

  public long count(Verdict verdict) {
    return cleanings.stream().filter(cleaning -> cleaning.verdict() == verdict).count();
  }
}
