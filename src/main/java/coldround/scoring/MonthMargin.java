package coldround.scoring;

import java.time.YearMonth;

/**
 * How far a unit is from locking out in one month, if the coil is not cleaned before.
 *
 * @param designAmbientC air temperature the unit must cope with in that month
 * @param tripAmbientC ambient at which it locks out at the end of the month
 */
public record MonthMargin(YearMonth month, double designAmbientC, double tripAmbientC) {

  /** Trip ambient less design ambient. */
  public double marginK() {
    return tripAmbientC - designAmbientC;
  }
}
