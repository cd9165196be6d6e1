package coldround.rounds;

import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import java.time.LocalDate;

/**
 * A reason as it stood when a plan was made, told in both systems of units.
 *
 * @param governs true for the one that decides
 * @param date the day it asks for, null for none
 */
public record Why(
    String code, boolean governs, LocalDate date, String us, String si, String source) {

  public static Why of(Reason reason, boolean governs, LocalDate date) {
    return new Why(
        reason.code(),
        governs,
        date,
        reason.text(MeasureSystem.US),
        reason.text(MeasureSystem.SI),
        reason.source().toString());
  }

  public String text(MeasureSystem system) {
    return system == MeasureSystem.SI ? si : us;
  }
}
