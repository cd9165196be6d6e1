package coldround.scoring;

import coldround.scoring.statistics.FaultTally;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;

/**
 * What the fault records of all units add up to by class, and the sums from which the priors that
 * hold now were estimated.
 */
public interface FaultTallies {

  /** Keeps what these units add, in the place of what they added before. */
  void put(Collection<FaultRecordOf> records);

  /**
   * A unit with its record.
   *
   * @param retired day on which it went out of use; null for in use
   */
  record FaultRecordOf(String unitId, FaultRecord record, LocalDate retired) {}

  /** Units that add nothing: without a record. */
  void remove(Collection<String> unitIds);

  /** Sums by class of the units in use on that day, from what was on record then. */
  Map<String, FaultTally> sums(LocalDate day);

  /** Sums that the priors in force were estimated from; empty before the first time. */
  Map<String, FaultTally> inForce();

  void putInForce(Map<String, FaultTally> sums);
}
