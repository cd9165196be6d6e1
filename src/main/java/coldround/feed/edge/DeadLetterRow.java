package coldround.feed.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** A change that could not be delivered, kept whole: the feed may forget it sooner. */
@Entity
@Table(name = "dead_letter")
class DeadLetterRow {
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long id;

  String subscriptionId;
  Long eventId;
  int eventPart;
  String type;
  String subject;
  Instant happened;
  String data;
  int tries;
  String problem;
  Instant died;
  boolean again;

  static DeadLetterRow of(
      String subscriptionId, FeedEvent event, int tries, String problem, Instant now) {
    DeadLetterRow row = new DeadLetterRow();
    row.subscriptionId = subscriptionId;
    row.eventId = event.number();
    row.eventPart = event.part();
    row.type = event.type();
    row.subject = event.subject();
    row.happened = event.happened();
    row.data = event.data();
    row.tries = tries;
    row.problem = problem;
    row.died = now;
    return row;
  }

  FeedEvent event() {
    return new FeedEvent(eventId, eventPart, 0, type, subject, happened, data);
  }
}
