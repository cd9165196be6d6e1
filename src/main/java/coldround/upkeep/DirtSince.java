package coldround.upkeep;

import coldround.scoring.CoilState;
import java.time.LocalDate;

/** Since when a condenser coil has been getting dirty. */
final class DirtSince {

  private DirtSince() {}

  /**
   * The day before which no date of a cleaning makes sense: the last cleaning, else the first day
   * on record; null when there is none.
   */
  static LocalDate notBefore(UnitCase unit) {
    CoilState coil = unit.coil();
    return coil.lastCleaned().orElse(unit.countedFrom(TaskCode.CONDENSER));
  }

  /**
   * The day on which the excess was nothing if it always grew as it does now, not before the last
   * cleaning.
   */
  static LocalDate day(UnitCase unit) {
    CoilState coil = unit.coil();
    long days = Math.round(coil.excessK() / coil.foulingKPerDay());
    LocalDate even = unit.today().minusDays(Math.min(days, 36500));
    return WorkRecord.later(even, notBefore(unit));
  }
}
