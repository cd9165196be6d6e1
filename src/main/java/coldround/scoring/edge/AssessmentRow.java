package coldround.scoring.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;

@Entity
@Table(name = "assessment")
class AssessmentRow {
  @Id Long unitId;
  LocalDate asOf;
  double score;
  double low;
  double high;
  double completeness;
  String factors;
  LocalDate nextDue;
  String nextTask;

  /** Of the unit and its site, in small letters, to be searched. */
  String words;
}
