package coldround.scoring.edge;

import coldround.scoring.statistics.FaultTally;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** Sums that the prior of one class in force was estimated from. */
@Entity
@Table(name = "fault_prior")
class FaultPriorRow {
  @Id String faultClass;
  long units;
  long faults;
  long days;
  long faultsSquared;
  long faultDays;
  long daysSquared;

  static FaultPriorRow of(String faultClass, FaultTally tally) {
    FaultPriorRow row = new FaultPriorRow();
    row.faultClass = faultClass;
    row.units = tally.units();
    row.faults = tally.faults();
    row.days = tally.days();
    row.faultsSquared = tally.faultsSquared();
    row.faultDays = tally.faultDays();
    row.daysSquared = tally.daysSquared();
    return row;
  }

  FaultTally read() {
    return new FaultTally(units, faults, days, faultsSquared, faultDays, daysSquared);
  }
}
