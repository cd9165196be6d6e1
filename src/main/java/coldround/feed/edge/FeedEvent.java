package coldround.feed.edge;

import java.time.Instant;

/**
 * One change as the feed has it.
 *
 * @param number of the row that it stands in
 * @param part which change of that row, from 0
 * @param position its place; for a dead letter, which has left the feed, 0
 * @param data how it stands now, as JSON
 */
record FeedEvent(
    long number,
    int part,
    long position,
    String type,
    String subject,
    Instant happened,
    String data) {

  /** What tells it from all others. */
  String id() {
    String row = Long.toString(number, 36);
    return part == 0 ? row : row + "-" + Integer.toString(part, 36);
  }
}
