package coldround.fleet;

import coldround.quantity.Quantity;
import java.time.LocalDate;

/**
 * One failure event of a unit. Natural key: unit, date, failure mode.
 *
 * @param failureMode in the manner of ISO 14224, such as high-head-lockout
 * @param cause empty if unknown
 * @param repaired date of repair, null if unknown
 * @param downtime time out of use, null if unknown
 * @param stockLost value of goods lost, null if unknown
 */
public record Fault(
    LocalDate date,
    String failureMode,
    String cause,
    LocalDate repaired,
    Quantity downtime,
    Quantity stockLost,
    String note) {}
