package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.CoilState;
import coldround.scoring.FaultState;
import coldround.scoring.KindRule;
import coldround.scoring.LeakState;
import java.util.List;

/** Works out what a task is worth from the faults it prevents and what its neglect wastes. */
final class Worths {

  private static final double YEAR_DAYS = 365;
  private static final String OTHER = "other";
  private static final double KG_PER_LB = Measure.POUND.toBase(1);

  private Worths() {}

  static Worth of(UnitCase unit, String task, List<Ask> asks) {
    double days = unit.tables().limits().value(UpkeepLimit.WORTH_HORIZON);
    double breakdowns = 0;
    double energy = 0;
    double refrigerant = 0;
    for (TaskEffects.Share share : shares(unit, task, asks)) {
      double part = share.share();
      switch (share.loss()) {
        case DIRT -> energy += part * dirt(unit, days);
        case ENERGY -> energy += part * unit.dirty().costPerDay() * days;
        case REFRIGERANT -> refrigerant += part * lost(unit, days);
        case ALL_FAULTS -> breakdowns += part * faults(unit, 1, days) * costOf(unit, OTHER);
        case FAULTS -> {
          FaultState faults = unit.assessment().faults();
          double ofMode = unit.tables().modes().of(share.mode(), faults);
          breakdowns += part * faults(unit, ofMode, days) * costOf(unit, share.mode());
        }
      }
    }
    Costs costs = unit.tables().costs();
    return new Worth(
        costs.money(breakdowns),
        costs.money(energy),
        costs.money(refrigerant),
        new Quantity(days, Measure.DAY));
  }

  /** The greatest share of each effect whose condition holds. */
  private static List<TaskEffects.Share> shares(UnitCase unit, String task, List<Ask> asks) {
    return unit.tables().effects().shares(task, code -> asked(asks, code));
  }

  private static boolean asked(List<Ask> asks, String code) {
    for (Ask ask : asks) {
      if (ask.reason().rule().code().equals(code)) {
        return true;
      }
    }
    return false;
  }

  /** How many of a share of all faults are expected over the days. */
  private static double faults(UnitCase unit, double share, double days) {
    return unit.assessment().faults().expectedNextYear() * share * days / YEAR_DAYS;
  }

  /** What one fault of the mode costs, goods at risk included. */
  static double costOf(UnitCase unit, String mode) {
    KindRule kind = unit.tables().kinds().get(unit.unit().kind());
    return unit.prices().fault(mode, kind != null && kind.food());
  }

  /** Electricity that dirt on the condenser wastes over the days if it is left there. */
  private static double dirt(UnitCase unit, double days) {
    CoilState coil = unit.coil();
    double kelvinDays = coil.excessK() * days + coil.foulingKPerDay() * days * days / 2;
    return unit.dirty().costPerDayPerK() * kelvinDays;
  }

  /** Refrigerant lost over the days at the rolling-average rate. */
  private static double lost(UnitCase unit, double days) {
    LeakState leak = unit.assessment().leak();
    double kgPerYear = leak.chargeKg().orElse(0) * leak.rollingPercentPerYear().orElse(0) / 100;
    String gas = unit.assessment().supply().refrigerant();
    double perLb = unit.prices().of("refrigerant", gas.isEmpty() ? Costs.ANY : gas).amount();
    return kgPerYear / KG_PER_LB * perLb * days / YEAR_DAYS;
  }
}
