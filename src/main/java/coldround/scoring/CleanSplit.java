package coldround.scoring;

import coldround.reason.Source;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The split that the unit is taken to have with a clean coil, and where that figure comes from.
 *
 * @param sdK standard deviation of its error
 * @param date day of the reading, when it was measured
 * @param source row of the table that allowed it, or the default itself
 */
public record CleanSplit(
    double splitK, double sdK, Basis basis, Optional<LocalDate> date, Source source) {

  /** From best to least. */
  public enum Basis {
    /** The lowest split soon after a cleaning. */
    MEASURED,
    /** Measured, but held down to what the design or class allows at most. */
    MEASURED_HELD_DOWN,
    /** The design split of the equipment list. */
    DESIGN,
    /** The usual split of the kind of unit. */
    KIND
  }
}
