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
  String type;
  String subject;
  Instant happened;
  String data;
  int tries;
  String problem;
  Instant died;
  boolean again;

  static DeadLetterRow of(
      String subscriptionId, FeedEventRow event, int tries, String problem, Instant now) {
    DeadLetterRow row = new DeadLetterRow();
    row.subscriptionId = subscriptionId;
    row.eventId = event.id;
    row.type = event.type;
    row.subject = event.subject;
    row.happened = event.happened;
    row.data = event.data;
    row.tries = tries;
    row.problem = problem;
    row.died = now;
    return row;
  }

  FeedEventRow event() {
    FeedEventRow event = new FeedEventRow();
    event.id = eventId;
    event.type = type;
    event.subject = subject;
    event.happened = happened;
    event.data = data;
    return event;
  }
}
