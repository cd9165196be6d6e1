package coldround.http;

import java.util.Arrays;
import java.util.List;

/** If-Match and If-None-Match of calls that change something (RFC 9110, section 13). */
public final class Preconditions {

  private Preconditions() {}

  /**
   * @param current tag of what is there, without quotes; null where there is nothing
   * @param known what is there, to be told when it is not what the caller thinks
   * @throws Problem 412 when what is there is not what the caller has seen
   */
  public static void check(String ifMatch, String ifNoneMatch, String current, Object known) {
    boolean lost = ifMatch != null && !names(ifMatch, current, false);
    boolean there = ifMatch == null && ifNoneMatch != null && names(ifNoneMatch, current, true);
    if (lost || there) {
      throw new Problem(
              412,
              "changed",
              "This is not as it was",
              current == null
                  ? "There is nothing here by now. Read it again, then decide."
                  : "Somebody else has changed it. Read it again, then decide.",
              List.of())
          .telling("known", known);
    }
  }

  /** Strong comparison for If-Match, weak for If-None-Match. */
  private static boolean names(String header, String current, boolean weak) {
    if (current == null) {
      return false;
    }
    return Arrays.stream(header.split(","))
        .map(String::strip)
        .map(tag -> weak && tag.startsWith("W/") ? tag.substring(2) : tag)
        .anyMatch(tag -> tag.equals("*") || tag.equals('"' + current + '"'));
  }
}
