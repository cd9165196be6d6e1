package coldround.feed.edge;

import coldround.feed.ChangeText;
import coldround.feed.PackedChanges;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Changes that were made together: one as text, several packed. */
@Entity
@Table(name = "feed_event")
class FeedEventRow {
  // numbered by the database as it is inserted: changes of one thing keep their order
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long id;

  /** Place of the last change; null as long as they have none. */
  Long position;

  Instant happened;

  /** How many. */
  int changes;

  // of one change; null for several
  String type;
  String subject;
  String data;

  /** Null for one. */
  byte[] packed;

  /** All of them, which must have their places. */
  List<FeedEvent> events() {
    List<ChangeText> texts =
        packed == null
            ? List.of(new ChangeText(type, subject, data))
            : PackedChanges.unpack(packed, changes);
    List<FeedEvent> events = new ArrayList<>();
    for (ChangeText text : texts) {
      int part = events.size();
      long place = position - changes + 1 + part;
      events.add(
          new FeedEvent(id, part, place, text.type(), text.subject(), happened, text.data()));
    }
    return events;
  }
}
