package coldround.replacement;

/**
 * What a unit costs to run in one year, in money of today.
 *
 * @param faults number of faults expected
 * @param repairs calls and repairs
 * @param stock goods lost
 * @param downtime trouble of being without the unit
 * @param refrigerant gas lost
 * @param energy electricity above what a new clean unit would use
 * @param upkeep cleanings
 */
public record YearCost(
    double faults,
    double repairs,
    double stock,
    double downtime,
    double refrigerant,
    double energy,
    double upkeep) {

  public double total() {
    return ofFaults() + refrigerant + energy + upkeep;
  }

  /** All that faults cost. */
  public double ofFaults() {
    return repairs + stock + downtime;
  }

  /** With each part multiplied, to see what depends on it. */
  YearCost times(double faultFactor, double gasFactor, double energyFactor) {
    return new YearCost(
        faults * faultFactor,
        repairs * faultFactor,
        stock * faultFactor,
        downtime * faultFactor,
        refrigerant * gasFactor,
        energy * energyFactor,
        upkeep);
  }
}
