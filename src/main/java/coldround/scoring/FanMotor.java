package coldround.scoring;

import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * The latest current of one fan motor.
 *
 * @param quantity condenser_fan or evaporator_fan
 * @param part which fan, empty when there is one
 * @param ratedA nameplate amps, where known
 * @param loadPercent of nameplate, where known
 */
public record FanMotor(
    String quantity,
    String part,
    LocalDate date,
    double measuredA,
    OptionalDouble ratedA,
    OptionalDouble loadPercent,
    Verdict verdict) {

  /** Against the limits of the table. */
  public enum Verdict {
    UNDERLOADED,
    NORMAL,
    OVERLOADED,
    /** No nameplate amps to compare with. */
    UNKNOWN
  }

  public boolean wantsLook() {
    return verdict == Verdict.UNDERLOADED || verdict == Verdict.OVERLOADED;
  }
}
