package coldround.upkeep;

import coldround.scoring.CoilState;
import coldround.scoring.LimitName;
import coldround.scoring.MonthMargin;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.util.List;

/**
 * A unit's condenser over the twelve months after its assessment.
 *
 * @param lockouts expected number
 * @param energy electricity wasted by dirt, in money
 * @param cleanings number
 */
record CoilYear(double lockouts, double energy, int cleanings) {

  private static final int MONTHS = 12;
  private static final int MID_MONTH = 15;
  private static final double MONTH_DAYS = 365.0 / MONTHS;
  private static final String LOCKOUT = "high-head-lockout";

  /**
   * @param firstCleaning when it is next cleaned; null for not in these months
   * @param hotterK added to every month's design ambient
   */
  static CoilYear of(UnitCase unit, LocalDate firstCleaning, double hotterK) {
    Cleanings cleanings = new Cleanings(unit, firstCleaning);
    TripState trip = unit.assessment().trip();
    double lockouts = 0;
    double kelvinDays = 0;
    for (int i = 0; i < MONTHS; i++) {
      LocalDate day = unit.today().plusMonths(i).withDayOfMonth(MID_MONTH);
      double excessK = cleanings.excessK(day.isBefore(unit.today()) ? unit.today() : day);
      kelvinDays += excessK * MONTH_DAYS;
      lockouts += lockouts(unit, trip, day, excessK, hotterK);
    }
    return new CoilYear(lockouts, kelvinDays * unit.dirty().costPerDayPerK(), cleanings.count());
  }

  /** By the margin of the month; by the record of the unit where no cut-out is known. */
  private static double lockouts(
      UnitCase unit, TripState trip, LocalDate day, double excessK, double hotterK) {
    if (trip.cutOutC().isEmpty() || trip.months().isEmpty()) {
      return recorded(unit) / MONTHS;
    }
    double tripC = trip.cutOutC().getAsDouble() - unit.coil().clean().splitK() - excessK;
    double designC = designC(trip.months(), day) + hotterK;
    return unit.tables().lockouts().perMonth(tripC - designC);
  }

  /** Lockouts expected next year from the unit's faults alone. */
  static double recorded(UnitCase unit) {
    var faults = unit.assessment().faults();
    return faults.expectedNextYear() * unit.tables().modes().of(LOCKOUT, faults);
  }

  private static double designC(List<MonthMargin> months, LocalDate day) {
    for (MonthMargin month : months) {
      if (month.month().getMonth() == day.getMonth()) {
        return month.designAmbientC();
      }
    }
    throw new IllegalStateException("the months of a year lack " + day.getMonth());
  }

  /** The excess of a coil that is cleaned on a day, and again whenever it reaches its limit. */
  private static final class Cleanings {

    private final LocalDate today;
    private final LocalDate first;
    private final CoilState coil;
    private final double everyDays;

    Cleanings(UnitCase unit, LocalDate firstCleaning) {
      today = unit.today();
      coil = unit.coil();
      first = firstCleaning != null && firstCleaning.isBefore(today) ? today : firstCleaning;
      double limitK = unit.tables().scoringLimits().value(LimitName.EXCESS_LIMIT);
      int longest =
          unit.tables()
              .intervals()
              .find(TaskCode.CONDENSER, unit.unit().kind())
              .map(interval -> interval.longestDays(unit.surroundings()))
              .orElse(Integer.MAX_VALUE);
      double byExcess =
          coil.foulingKPerDay() > 0 ? limitK / coil.foulingKPerDay() : Double.POSITIVE_INFINITY;
      everyDays = Math.max(1, Math.min(longest, byExcess));
    }

    double excessK(LocalDate day) {
      if (first == null || day.isBefore(first)) {
        return coil.excessKAfter(UnitCase.days(today, day));
      }
      return coil.foulingKPerDay() * (UnitCase.days(first, day) % everyDays);
    }

    int count() {
      LocalDate end = today.plusMonths(MONTHS);
      boolean none = first == null || !first.isBefore(end);
      return none ? 0 : 1 + (int) Math.floor((UnitCase.days(first, end) - 1) / everyDays);
    }
  }
}
