package coldround.upkeep;

import coldround.scoring.CoilState;
import coldround.scoring.LimitName;
import coldround.scoring.MonthMargin;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;

/**
 * The trip ambient of a unit day by day against the design ambient of each month, backwards to the
 * last cleaning and forwards for a year.
 */
final class TripForecast {

  private static final int YEAR = 365;

  private final LocalDate today;
  private final double tripC;
  private final double foulingKPerDay;
  private final double limitK;
  private final double[] designC = new double[13];
  private final double helpsAfterDays;
  private final LocalDate from;

  private TripForecast(UnitCase unit) {
    TripState trip = unit.assessment().trip();
    CoilState coil = unit.coil();
    today = unit.today();
    tripC = trip.tripAmbientC().orElseThrow();
    foulingKPerDay = coil.foulingKPerDay();
    limitK = trip.limitK();
    for (MonthMargin month : trip.months()) {
      designC[month.month().getMonthValue()] = month.designAmbientC();
    }
    double watchK = unit.tables().scoringLimits().value(LimitName.EXCESS_WATCH);
    helpsAfterDays = daysUntil(coil.excessK(), watchK, foulingKPerDay);
    from = WorkRecord.later(today.minusDays(YEAR), DirtSince.notBefore(unit));
  }

  static TripForecast of(UnitCase unit) {
    return new TripForecast(unit);
  }

  private static double daysUntil(double value, double limit, double perDay) {
    if (value >= limit && perDay <= 0) {
      return Double.NEGATIVE_INFINITY;
    }
    return perDay > 0 ? Math.ceil((limit - value) / perDay) : Double.POSITIVE_INFINITY;
  }

  /**
   * The first day on which the margin is below its limit and the coil dirty enough for a cleaning
   * to give some of it back; in the past where that day is over. Null for none within a year.
   */
  LocalDate runsOut() {
    LocalDate last = today.plusDays(YEAR);
    LocalDate begin = from.isAfter(today) ? today : from;
    while (!begin.isAfter(last)) {
      LocalDate end = YearMonth.from(begin).atEndOfMonth();
      LocalDate found = firstIn(begin, end.isAfter(last) ? last : end);
      if (found != null) {
        return found;
      }
      begin = end.plusDays(1);
    }
    return null;
  }

  /** Within one month, where the design ambient stays and the margin only shrinks. */
  private LocalDate firstIn(LocalDate begin, LocalDate end) {
    double spareK = tripC - designC[begin.getMonthValue()] - limitK;
    double shortAfter =
        foulingKPerDay > 0 ? Math.floor(spareK / foulingKPerDay) + 1 : never(spareK);
    double earliest = ChronoUnit.DAYS.between(today, begin);
    double latest = ChronoUnit.DAYS.between(today, end);
    double first = Math.max(earliest, Math.max(shortAfter, helpsAfterDays));
    return first > latest ? null : today.plusDays((long) first);
  }

  private static double never(double spareK) {
    return spareK < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
  }

  double tripAmbientC(LocalDate day) {
    return tripC - foulingKPerDay * ChronoUnit.DAYS.between(today, day);
  }

  double designAmbientC(LocalDate day) {
    return designC[day.getMonthValue()];
  }
}
