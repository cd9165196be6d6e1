package coldround.feed.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "feed_event")
class FeedEventRow {
  // numbered by the database as it is inserted: changes of one thing keep their order
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long id;

  Long position;
  String type;
  String subject;
  Instant happened;
  String data;
}
