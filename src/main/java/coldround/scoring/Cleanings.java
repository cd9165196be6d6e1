package coldround.scoring;

import coldround.fleet.Visit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts the splits of a unit at its cleanings. Readings of a cleaning visit belong after the
 * cleaning unless visits of that purpose write them down as found.
 */
final class Cleanings {

  static final String CLEANED = "condenser-coil-cleaned";
  private static final String FAN_REPLACED = "condenser-fan-replaced";

  /**
   * From one cleaning to the next.
   *
   * @param cleaned day of the cleaning; null before the first one on record
   * @param used splits that may be judged, oldest first
   * @param sinceFan index in it of the first reading after the latest fan replacement, 0 for all
   */
  record Cycle(LocalDate cleaned, List<SplitReading> used, int sinceFan) {

    double days(int index) {
      return ChronoUnit.DAYS.between(origin(), used.get(index).date());
    }

    /** Day from which days are counted. */
    LocalDate origin() {
      return cleaned != null ? cleaned : used.get(0).date();
    }
  }

  private Cleanings() {}

  /** Oldest first; the last one is that of today, and is there even without readings. */
  static List<Cycle> cycles(Evidence evidence, List<SplitReading> splits) {
    List<Cycle> cycles = new ArrayList<>();
    LocalDate cleaned = null;
    List<SplitReading> used = new ArrayList<>();
    int sinceFan = 0;
    int next = 0;
    for (VisitFigures figures : evidence.figures()) {
      Visit visit = figures.visit;
      SplitReading split =
          next < splits.size() && figures.speaksOfHead() ? splits.get(next++) : null;
      boolean before = split != null && split.used() && split.asFound();
      if (before) {
        used.add(split);
      }
      if (visit.did(CLEANED)) {
        cycles.add(new Cycle(cleaned, used, sinceFan));
        cleaned = visit.date();
        used = new ArrayList<>();
        sinceFan = 0;
      }
      if (visit.did(FAN_REPLACED)) {
        sinceFan = used.size();
      }
      if (split != null && split.used() && !split.asFound()) {
        used.add(split);
      }
    }
    cycles.add(new Cycle(cleaned, used, sinceFan));
    return cycles;
  }
}
