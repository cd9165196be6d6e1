package coldround.intake;

import java.util.Collection;
import java.util.Optional;

/** Finds the name that a mistyped one was most likely meant to be. */
final class Nearest {

  private static final int LONGEST = 60;

  private Nearest() {}

  /** The name with the fewest letters to change, if those are no more than a third of it. */
  static Optional<String> to(String text, Collection<String> names) {
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String name : names) {
      int distance = text.length() > LONGEST ? least : distance(text, name);
      if (distance < least && distance <= Math.max(2, name.length() / 3)) {
        best = name;
        least = distance;
      }
    }
    return Optional.ofNullable(best);
  }

  /** Letters to put in, take out or replace (Levenshtein). */
  static int distance(String one, String other) {
    int[] above = new int[other.length() + 1];
    for (int j = 0; j <= other.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= one.length(); i++) {
      above = row(one.charAt(i - 1), i, other, above);
    }
    return above[other.length()];
  }

  private static int[] row(char letter, int i, String other, int[] above) {
    int[] row = new int[above.length];
    row[0] = i;
    for (int j = 1; j < row.length; j++) {
      int replaced = above[j - 1] + (letter == other.charAt(j - 1) ? 0 : 1);
      row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
    }
    return row;
  }
}
