package coldround.scoring;

import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How far a unit is from its high-pressure cut-out.
 *
 * @param cutOutC condensing temperature at the cut-out setting
 * @param tripAmbientC ambient at which the unit locks out with the split of the day
 * @param tripAmbientLowC low end of the 80 % band
 * @param tripAmbientHighC high end of the 80 % band
 * @param designAmbientC design ambient of the month of the assessment
 * @param designSource row that gave the design ambient or its yearly course
 * @param marginK trip ambient less design ambient, on the day
 * @param months the month of the assessment and the twelve after it; empty when not known
 * @param limitK margin below which a cleaning is due
 * @param runsOut first day within a year on which the margin is below its limit, uncleaned
 * @param missing what would have to be known; empty when all is
 */
public record TripState(
    OptionalDouble cutOutC,
    OptionalDouble tripAmbientC,
    OptionalDouble tripAmbientLowC,
    OptionalDouble tripAmbientHighC,
    OptionalDouble designAmbientC,
    Optional<Source> designSource,
    OptionalDouble marginK,
    List<MonthMargin> months,
    double limitK,
    Optional<LocalDate> runsOut,
    Optional<Reason> missing) {

  public TripState {
    months = List.copyOf(months);
  }
}
