package coldround.scoring.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;

@Entity
@Table(name = "score_history")
@IdClass(ScoreHistoryRow.Key.class)
class ScoreHistoryRow {

  record Key(Long unitId, LocalDate changed) implements Serializable {}

  @Id Long unitId;
  @Id LocalDate changed;
  double score;
  double low;
  double high;
  double completeness;
  String factors;
}
