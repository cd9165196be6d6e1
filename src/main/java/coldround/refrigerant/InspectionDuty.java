package coldround.refrigerant;

import coldround.reason.Reason;
import java.util.OptionalInt;

/**
 * How often the law wants a circuit inspected for leaks.
 *
 * @param everyMonths empty when no inspection is due by law
 * @param detectorMandatory true when the circuit must have an automatic leak detection system
 * @param reason the rule with its legal reference, or why there is none
 */
public record InspectionDuty(OptionalInt everyMonths, boolean detectorMandatory, Reason reason) {}
