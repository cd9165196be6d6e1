package coldround.rounds.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;

/** What the scheduling system has booked, as the rounds read it. */
@Entity
@Immutable
@Table(name = "booking")
class BookedRow {
  @Id String taskId;
  Instant starts;
  String technician;
}
