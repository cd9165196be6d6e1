package coldround.feed.edge;

import coldround.feed.Cursor;
import coldround.http.Answers;
import coldround.http.Page;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Pages of the feed as they are sent. A full page never changes, for what has a position keeps it:
 * the last ones asked for are kept, since many readers follow the same changes.
 */
@ApplicationScoped
class FeedPages {

  private static final long MOST_BYTES = 32L << 20;

  /**
   * Which page.
   *
   * @param position behind which it begins
   * @param service address that the events in it name
   */
  record Key(long position, int limit, URI service) {}

  /** A page in bytes. */
  record Kept(byte[] body, String tag, String next, int count) {}

  private final StoredFeed feed;
  private final Answers answers;
  private final Map<Key, Kept> kept = new LinkedHashMap<>(64, 0.75f, true);
  private long bytes;

  @Inject
  FeedPages(StoredFeed feed, Answers answers) {
    this.feed = feed;
    this.answers = answers;
  }

  /** One that is known to be full, or null. */
  Kept full(Key key) {
    synchronized (kept) {
      return kept.get(key);
    }
  }

  /** As it is now in the store. */
  Kept read(Key key) {
    List<FeedEvent> events = feed.after(key.position(), key.limit());
    long last = events.isEmpty() ? key.position() : events.get(events.size() - 1).position();
    String next = new Cursor(last).text();
    byte[] body =
        answers.bytes(
            new Page<>(
                events.stream().map(event -> CloudEvent.of(event, key.service())).toList(), next));
    Kept page = new Kept(body, Answers.tag(body), next, events.size());
    if (events.size() == key.limit()) {
      keep(key, page);
    }
    return page;
  }

  private void keep(Key key, Kept page) {
    synchronized (kept) {
      if (kept.put(key, page) == null) {
        bytes += page.body().length;
      }
      var oldest = kept.entrySet().iterator();
      while (bytes > MOST_BYTES && oldest.hasNext()) {
        bytes -= oldest.next().getValue().body().length;
        oldest.remove();
      }
    }
  }
}
