package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.CoilState;
import coldround.scoring.FaultState;
import coldround.scoring.KindRule;
import coldround.scoring.LeakState;
import java.util.List;
import java.util.Map;

/** Works out what a task is worth from the faults it prevents and what its neglect wastes. */
final class Worths {

  private static final double YEAR_DAYS = 365;
  private static final double KG_PER_LB = Measure.POUND.toBase(1);

  private Worths() {}

  static Worth of(UnitCase unit, String task, List<Ask> asks) {
    Map<String, Double> shares = shares(unit, task, asks);
    double days = unit.tables().limits().value(UpkeepLimit.WORTH_HORIZON);
    double breakdowns = 0;
    double energy = 0;
    double refrigerant = 0;
    for (Map.Entry<String, Double> share : shares.entrySet()) {
      switch (share.getKey()) {
        case TaskEffects.DIRT -> energy += share.getValue() * dirt(unit, days);
        case TaskEffects.ENERGY -> energy += share.getValue() * unit.dirty().costPerDay() * days;
        case TaskEffects.REFRIGERANT -> refrigerant += share.getValue() * lost(unit, days);
        default -> breakdowns += share.getValue() * faults(unit, share.getKey(), days);
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
  private static Map<String, Double> shares(UnitCase unit, String task, List<Ask> asks) {
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

  /** What faults of the mode are expected to cost over the days. */
  private static double faults(UnitCase unit, String mode, double days) {
    FaultState faults = unit.assessment().faults();
    boolean every = mode.equals(TaskEffects.EVERY_MODE);
    double share = every ? 1 : unit.tables().modes().of(mode, faults);
    double expected = faults.expectedNextYear() * share * days / YEAR_DAYS;
    return expected * costOf(unit, every ? "other" : mode);
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
