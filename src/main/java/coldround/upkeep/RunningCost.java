package coldround.upkeep;

import coldround.reason.Source;
import coldround.scoring.Assessment;

/**
 * What a unit costs to run with its condenser clean, and what dirt and faults add; in the currency
 * of scoring/costs.csv.
 *
 * @param electricityPerYear of the compressor with the clean split
 * @param perYearPerK more a year for each kelvin of excess
 * @param kilowatts power of the compressor
 * @param usualKilowatts power of one usual of its kind
 * @param measured true when the power comes from amps and volts of this unit
 * @param cleaning one cleaning of the condenser coil, done with other work
 * @param energySource row that says how long the compressor runs
 */
public record RunningCost(
    double electricityPerYear,
    double perYearPerK,
    double kilowatts,
    double usualKilowatts,
    boolean measured,
    double cleaning,
    Source energySource) {

  private static final double YEAR_DAYS = 365;

  public static RunningCost of(Upkeep upkeep, Assessment assessment) {
    UnitCase unit = new UnitCase(assessment, upkeep.tables());
    RunningDirty dirty = RunningDirty.of(unit);
    return new RunningCost(
        dirty.costPerDay() * YEAR_DAYS,
        dirty.costPerDayPerK() * YEAR_DAYS,
        dirty.kilowatts(),
        dirty.use().kilowatts(),
        dirty.measured(),
        CleaningCost.of(unit),
        dirty.use().source());
  }

  /** Share of the unit's faults to come that are of the mode. */
  public static double modeShare(Upkeep upkeep, String mode, Assessment assessment) {
    return upkeep.tables().modes().of(mode, assessment.faults());
  }
}
