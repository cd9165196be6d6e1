package coldround.scoring;

import coldround.scoring.statistics.FaultTally;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;

/**
 * What the fault records of all units in use add up to by class, and the sums from which the priors
 * that hold now were estimated.
 */
public interface FaultTallies {

  /** Keeps what these units add, in the place of what they added before. */
  void put(Collection<FaultRecordOf> records);

  /** A unit with its record. */
  record FaultRecordOf(String unitId, FaultRecord record) {}

  /** Units that add nothing any more: retired, or without a record. */
  void remove(Collection<String> unitIds);

  /** Sums by class, all records taken to that day. */
  Map<String, FaultTally> sums(LocalDate day);

  /** Sums that the priors in force were estimated from; empty before the first time. */
  Map<String, FaultTally> inForce();

  void putInForce(Map<String, FaultTally> sums);
}
