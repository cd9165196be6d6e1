package coldround.scoring;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The cold side of a unit at the latest visit that read it.
 *
 * @param date of the readings
 * @param evaporatingC dew point at the suction pressure
 * @param differenceK air entering the evaporator, else the box, less the evaporating temperature
 * @param superheatK suction line less the dew point
 * @param subcoolingK bubble point at the head pressure less the liquid line
 * @param airDropK air entering less air leaving the evaporator
 * @param grade latest grade of the evaporator coil that still holds
 * @param gradeDate day of it
 * @param findings what is outside its limits and what to do about it
 */
public record EvaporatorState(
    Optional<LocalDate> date,
    OptionalDouble evaporatingC,
    OptionalDouble differenceK,
    OptionalDouble superheatK,
    OptionalDouble subcoolingK,
    OptionalDouble airDropK,
    Optional<String> grade,
    Optional<LocalDate> gradeDate,
    List<Reason> findings) {

  public EvaporatorState {
    findings = List.copyOf(findings);
  }
}
