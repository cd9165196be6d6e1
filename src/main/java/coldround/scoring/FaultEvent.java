package coldround.scoring;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One failure in the history of a unit.
 *
 * @param previous day of the failure that this one repeats: the same mode within the repeat window
 * @param repairThatDidNotHold day of the repair after which the same mode came back too soon
 */
public record FaultEvent(
    LocalDate date,
    String mode,
    Optional<LocalDate> previous,
    Optional<LocalDate> repairThatDidNotHold) {

  public boolean repeat() {
    return previous.isPresent();
  }

  public boolean didNotHold() {
    return repairThatDidNotHold.isPresent();
  }
}
