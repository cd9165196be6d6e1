package coldround.upkeep.edge;

import coldround.upkeep.Completion;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

@Entity
@Table(name = "completion")
class CompletionRow {
  @Id String taskId;
  Long unitId;
  String visit;
  LocalDate completed;
  Instant recorded;

  Completion read() {
    return new Completion(taskId, visit, completed);
  }
}
