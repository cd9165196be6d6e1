package coldround.scoring;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Electrical readings of a unit, each the latest that still holds: what was replaced since is not
 * held against it.
 *
 * @param voltageDate day of the latest three line voltages
 * @param imbalancePercent largest deviation from their mean, in percent of it (NEMA MG 1)
 * @param meanVoltageV of the latest line voltages, two or three
 * @param fans latest current of each fan motor
 * @param compressorA latest current of the compressor
 * @param compressorDate day of it
 * @param compressorUsualA median of its earlier currents at like pressures
 * @param compressorChangePercent of the latest against the usual
 * @param contactor latest grade: good, worn or bad
 * @param contactorDate day of it
 * @param wiring latest grade: good, worn or bad
 * @param wiringDate day of it
 * @param findings what is outside its limits and what to do about it
 */
public record ElectricalState(
    Optional<LocalDate> voltageDate,
    OptionalDouble imbalancePercent,
    OptionalDouble meanVoltageV,
    List<FanMotor> fans,
    OptionalDouble compressorA,
    Optional<LocalDate> compressorDate,
    OptionalDouble compressorUsualA,
    OptionalDouble compressorChangePercent,
    Optional<String> contactor,
    Optional<LocalDate> contactorDate,
    Optional<String> wiring,
    Optional<LocalDate> wiringDate,
    List<Reason> findings) {

  public ElectricalState {
    fans = List.copyOf(fans);
    findings = List.copyOf(findings);
  }
}
