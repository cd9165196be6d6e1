package coldround.scoring;

import coldround.scoring.statistics.GammaPoisson;
import java.util.List;
import java.util.Optional;

/**
 * The faults of a unit and what they let expect.
 *
 * @param events oldest first, each failure once
 * @param repeatedModes modes that came back within the repeat window and are not yet history
 * @param observedYears time under observation: since the first visit or fault
 * @param posterior rate of faults a year after the unit's own record
 * @param expectedNextYear faults expected in the next 12 months
 * @param lowNextYear low end of the 80 % interval of the count
 * @param highNextYear high end of the 80 % interval of the count
 * @param repeatProbability chance of at least one fault of a repeated mode in the next 12 months
 * @param trend with enough events only
 * @param known false when there is no record at all
 */
public record FaultState(
    List<FaultEvent> events,
    List<String> repeatedModes,
    double observedYears,
    GammaPoisson posterior,
    double expectedNextYear,
    int lowNextYear,
    int highNextYear,
    double repeatProbability,
    Optional<FaultTrend> trend,
    boolean known) {

  public FaultState {
    events = List.copyOf(events);
    repeatedModes = List.copyOf(repeatedModes);
  }

  /** Failures that came back too soon after a repair, oldest first. */
  public List<FaultEvent> repairsThatDidNotHold() {
    return events.stream().filter(FaultEvent::didNotHold).toList();
  }
}
