package coldround.feed;

import java.util.List;

/** What is open now, for a reader who begins and has missed the changes that led to it. */
public interface Snapshot {

  /**
   * A part of it.
   *
   * @param items each to be written as JSON, as the feed tells it
   * @param next place behind the last one; empty at the end
   */
  record Slice(List<?> items, String next) {
    public Slice {
      items = List.copyOf(items);
    }
  }

  /**
   * The part behind a place, in an order that no change disturbs.
   *
   * @param place empty for the beginning
   * @param limit most items
   */
  Slice after(String place, int limit);
}
