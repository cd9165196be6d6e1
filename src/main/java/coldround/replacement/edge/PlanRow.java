package coldround.replacement.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "replacement_plan")
class PlanRow {
  @Id String id;
  Instant made;
  String customer;
  byte[] answer;
  byte[] sheet;
  byte[] report;
}
