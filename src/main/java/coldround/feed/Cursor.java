package coldround.feed;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A place in the feed, opaque to its reader: everything up to that position has been read.
 *
 * @param position 0 for the beginning
 */
public record Cursor(long position) {

  private static final String PREFIX = "f1.";
  private static final Pattern TEXT = Pattern.compile("f1\\.[0-9a-z]{1,12}");

  public String text() {
    return PREFIX + Long.toString(position, 36);
  }

  /** Empty for a text that was no cursor of this feed. */
  public static Optional<Cursor> parse(String text) {
    if (!TEXT.matcher(text).matches()) {
      return Optional.empty();
    }
    return Optional.of(new Cursor(Long.parseLong(text.substring(PREFIX.length()), 36)));
  }
}
