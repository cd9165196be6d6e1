package coldround.backup.edge;

import coldround.feed.EventTypes;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A store that was taken back to an earlier moment gives no number a second time: whoever read on
 * after that moment would take other changes for those that it knows. The feed goes on far ahead,
 * at a place made of the time, with a change that says so; the places between are nobody's.
 */
final class FeedRestored {

  /** Far more places than changes can be written in a millisecond. */
  private static final long PLACES_A_MILLISECOND = 1000;

  private FeedRestored() {}

  /**
   * @param connection on a store of the newest schema, committed behind this
   * @param made moment of the state that the store has now; null where it is not known
   * @param now when it was brought there
   * @return the place behind which the feed goes on
   */
  static long mark(Connection connection, ObjectMapper json, Instant made, Instant now)
      throws SQLException {
    long next = new Schema(connection).next().get("feed_event.id");
    connection.setAutoCommit(false);
    try (Statement statement = connection.createStatement()) {
      long head = head(statement);
      long place =
          Math.max(now.toEpochMilli() * PLACES_A_MILLISECOND, Math.max(head + 1, next + 1));
      insert(connection, place, data(json, made, now), now);
      statement.execute("update feed_head set position = " + place + " where id = 1");
      for (String each : Schema.goingOnFrom(Map.of("feed_event.id", place + 1))) {
        statement.execute(each);
      }
      connection.commit();
      return place;
    } catch (SQLException | RuntimeException e) {
      connection.rollback();
      throw e;
    }
  }

  private static long head(Statement statement) throws SQLException {
    try (ResultSet found =
        statement.executeQuery("select position from feed_head where id = 1 for update")) {
      found.next();
      return found.getLong(1);
    }
  }

  private static String data(ObjectMapper json, Instant made, Instant now) {
    Map<String, String> data = new LinkedHashMap<>();
    if (made != null) {
      data.put("made", made.toString());
    }
    data.put("restored", now.toString());
    return json.valueToTree(data).toString();
  }

  private static void insert(Connection connection, long place, String data, Instant now)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into feed_event (id, position, type, subject, happened, data)"
                + " values (?, ?, ?, 'feed', ?, ?)")) {
      insert.setLong(1, place);
      insert.setLong(2, place);
      insert.setString(3, EventTypes.FEED_RESTORED);
      insert.setTimestamp(4, Timestamp.from(now));
      insert.setString(5, data);
      insert.execute();
    }
  }
}
