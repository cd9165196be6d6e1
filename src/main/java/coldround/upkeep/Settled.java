package coldround.upkeep;

import java.time.LocalDate;

/** Whether what happened on a day has been dealt with. */
final class Settled {

  private Settled() {}

  /** True when work that settles the event was done on its day or later. */
  static boolean since(UnitCase unit, Trigger trigger, LocalDate happened) {
    LocalDate work = unit.record().lastWork(trigger.clearedBy());
    return work != null && !work.isBefore(happened);
  }
}
