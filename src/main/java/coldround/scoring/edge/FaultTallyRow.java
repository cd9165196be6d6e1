package coldround.scoring.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;

/** What one unit in use adds to the estimate of its class's prior. */
@Entity
@Table(name = "fault_tally")
class FaultTallyRow {
  @Id Long unitId;
  String faultClass;
  LocalDate firstSeen;
  int faults;
}
