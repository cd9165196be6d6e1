package coldround.upkeep;

import coldround.fleet.Unit;
import coldround.scoring.ElectricalState;
import coldround.scoring.MonthMargin;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a dirty condenser coil costs in electricity.
 *
 * @param penalty more power for each kelvin of condensing temperature
 * @param kilowatts compressor power
 * @param measured true when the power comes from amps and volts of this unit
 * @param use hours and cycle of the kind
 * @param price of electricity
 */
record RunningDirty(
    CyclePower.Penalty penalty, double kilowatts, boolean measured, EnergyUse.Use use, Cost price) {

  private static final double ROOT_3 = Math.sqrt(3);

  static RunningDirty of(UnitCase unit) {
    UpkeepTables tables = unit.tables();
    EnergyUse.Use use = tables.energy().of(unit.unit().kind());
    String gas = unit.assessment().supply().refrigerant();
    double condensingC = usualAmbientC(unit) + unit.coil().clean().splitK();
    double riseK = tables.limits().value(UpkeepLimit.DIRT_RISE);
    double measured = measuredKilowatts(unit);
    return new RunningDirty(
        tables.cyclePower().penalty(gas, use.cycle(), condensingC, riseK),
        measured > 0 ? measured : use.kilowatts(),
        measured > 0,
        use,
        unit.prices().of("electricity", Costs.ANY));
  }

  private static double usualAmbientC(UnitCase unit) {
    UpkeepLimits limits = unit.tables().limits();
    List<MonthMargin> months = unit.assessment().trip().months();
    if (months.isEmpty()) {
      return limits.value(UpkeepLimit.USUAL_AMBIENT);
    }
    double sum = 0;
    for (MonthMargin month : months) {
      sum += month.designAmbientC();
    }
    return sum / months.size() - limits.value(UpkeepLimit.USUAL_BELOW_DESIGN);
  }

  /** 0 when amps or volts are not known. */
  private static double measuredKilowatts(UnitCase unit) {
    ElectricalState electrical = unit.assessment().electrical();
    Unit plate = unit.unit();
    UpkeepLimits limits = unit.tables().limits();
    OptionalDouble rated = plate.plateBase("compressor_rated");
    OptionalDouble amps = electrical.compressorUsualA();
    double usualA = amps.orElse(rated.orElse(0) * limits.value(UpkeepLimit.RATED_SHARE));
    double volts = electrical.meanVoltageV().orElse(plate.plateBase("supply").orElse(0));
    boolean threePhase =
        electrical.imbalancePercent().isPresent()
            || volts >= limits.value(UpkeepLimit.THREE_PHASE_FROM);
    double phases = threePhase ? ROOT_3 : 1;
    return phases * volts * usualA * limits.value(UpkeepLimit.POWER_FACTOR) / 1000;
  }

  /** Electricity that the compressor uses a day, in money. */
  double costPerDay() {
    return kilowatts * use.runHours() * price.amount();
  }

  /** More money a day for each kelvin above the clean split. */
  double costPerDayPerK() {
    return penalty.sharePerK() * costPerDay();
  }
}
