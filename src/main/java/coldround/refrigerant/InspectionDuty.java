package coldround.refrigerant;

import coldround.reason.Reason;
import java.util.OptionalInt;
import java.util.function.Supplier;

/**
 * How often the law wants a circuit inspected for leaks.
 *
 * @param everyMonths empty when no inspection is due by law
 * @param detectorMandatory true when the circuit must have an automatic leak detection system
 * @param why the rule with its legal reference, or why there is none
 */
public record InspectionDuty(
    OptionalInt everyMonths, boolean detectorMandatory, Supplier<Reason> why) {

  /** The same told. */
  public Reason reason() {
    return why.get();
  }
}
