package coldround.feed;

import java.util.Optional;

/**
 * A place in the feed, opaque to its reader: everything up to that position has been read.
 *
 * @param position 0 for the beginning
 */
public record Cursor(long position) {

  private static final String PREFIX = "f1.";

  public String text() {
    return PREFIX + Long.toString(position, 36);
  }

  /** Empty for a text that was no cursor of this feed. */
  public static Optional<Cursor> parse(String text) {
    if (!text.matches("f1\\.[0-9a-z]{1,12}")) {
      return Optional.empty();
    }
    return Optional.of(new Cursor(Long.parseLong(text.substring(PREFIX.length()), 36)));
  }
}
