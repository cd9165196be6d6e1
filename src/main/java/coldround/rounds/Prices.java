package coldround.rounds;

import coldround.quantity.Measure;

/**
 * What a round is paid with, all in one currency.
 *
 * @param labourPerHour of a technician
 * @param overtimeFactor of labour after the regular hours, such as 1.5
 * @param perKm of a van
 * @param trip of coming to a site
 */
public record Prices(
    double labourPerHour, double overtimeFactor, double perKm, double trip, Measure currency) {

  double labourPerMinute() {
    return labourPerHour / 60;
  }

  /** On top of labour. */
  double overtimePerMinute() {
    return labourPerMinute() * Math.max(0, overtimeFactor - 1);
  }
}
