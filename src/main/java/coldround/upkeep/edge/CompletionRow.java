package coldround.upkeep.edge;

import coldround.store.ByKeys;
import coldround.upkeep.Completion;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;

@Entity
@Table(name = "completion")
class CompletionRow {
  static final ByKeys OF_TASKS =
      ByKeys.texts(
          "select task_id, visit, completed from completion"
              + " where task_id = any(cast(? as varchar array))");
  @Id String taskId;
  Long unitId;
  String visit;
  LocalDate completed;
  Instant recorded;

  /** A row of {@link #OF_TASKS}. */
  static Completion completion(ResultSet stored) throws SQLException {
    return new Completion(
        stored.getString(1), stored.getString(2), stored.getObject(3, LocalDate.class));
  }

  Completion read() {
    return new Completion(taskId, visit, completed);
  }
}
