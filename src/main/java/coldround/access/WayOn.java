package coldround.access;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The page that somebody wanted who was asked to log in first, with all that was asked of it.
 * Whoever makes up an address can write anything there, so it is a page of ours or nothing.
 */
public final class WayOn {

  /** What carries it in addresses and forms. */
  public static final String NAME = "to";

  /** Characters once encoded: a whole request line has room for 4096. */
  static final int LONGEST = 3500;

  /** RFC 3986: what a segment of a path may hold, and the query beside the slash and "?". */
  private static final String OTHER = "[A-Za-z0-9._~!$&'()*+,;=:@-]++|%[0-9A-Fa-f]{2}";

  private static final Pattern PATH =
      Pattern.compile("/(?:(?:%1$s)++(?:/(?:%1$s)++)*+/?)?".formatted(OTHER));

  private static final Pattern QUERY = Pattern.compile("(?:%s|[/?]++)*+".formatted(OTHER));

  /** Where a path leads elsewhere than it seems, once somebody on the way has decoded it. */
  private static final Pattern MISLEADING =
      Pattern.compile("(?i).*(?:%2f|%5c|%[01][0-9a-f]|%7f).*|(?:.*/)?(?:\\.|%2e){1,2}(?:[/;].*)?");

  /** Of the way in itself, of programs, and of what pages load: no pages to come back to. */
  private static final Set<String> NO_PAGES =
      Set.of("", "enter", "leave", "api", "q", "assets", "favicon.ico", "sw.js");

  private final String address;

  private WayOn(String address) {
    this.address = address;
  }

  /**
   * @param asked path and query as a browser sends them; null and anything else are nothing
   * @return empty unless it is certainly a page of ours that is worth coming back to
   */
  public static Optional<WayOn> of(String asked) {
    if (asked == null || asked.length() > LONGEST || encoded(asked).length() > LONGEST) {
      return Optional.empty();
    }
    int end = asked.indexOf('?');
    String path = end < 0 ? asked : asked.substring(0, end);
    String query = end < 0 ? "" : asked.substring(end + 1);
    boolean ours =
        PATH.matcher(path).matches()
            && QUERY.matcher(query).matches()
            && !MISLEADING.matcher(path).matches()
            && page(path, query);
    return ours ? Optional.of(new WayOn(asked)) : Optional.empty();
  }

  // where the pages begin is another address for each role, unless something was asked there
  private static boolean page(String path, String query) {
    String first = path.split("/", 3)[path.length() > 1 ? 1 : 0];
    String name = URLDecoder.decode(first.replace("+", "%2B"), StandardCharsets.UTF_8);
    boolean asked = path.equals("/") && !query.isEmpty();
    return asked || !NO_PAGES.contains(name.toLowerCase(Locale.ROOT).replaceFirst(";.*", ""));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** Path and query. */
  public String address() {
    return address;
  }

  /** The address of the way in by which it is carried along. */
  public String by(String wayIn) {
    return wayIn + "?" + NAME + "=" + encoded(address);
  }
}
