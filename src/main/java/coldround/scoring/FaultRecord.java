package coldround.scoring;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * Fault record of one unit.
 *
 * @param faultClass row of fault-priors.csv
 * @param firstSeen first visit or fault on record
 * @param until last day that is looked at
 * @param events each failure once, oldest first
 */
public record FaultRecord(
    String faultClass, LocalDate firstSeen, LocalDate until, List<FaultEvent> events) {

  public FaultRecord {
    events = List.copyOf(events);
  }

  /** Days under observation. */
  public long days() {
    return ChronoUnit.DAYS.between(firstSeen, until);
  }
}
