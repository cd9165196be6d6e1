package coldround.upkeep;

import coldround.reason.Source;
import java.util.List;

/**
 * How often a task is done where nothing else asks for it: a row of scoring/intervals.csv, in days.
 *
 * @param harshIn surroundings in which the harsh figures hold
 * @param longest interval that is not exceeded whatever the condition
 */
record Interval(
    String task,
    KindSet kinds,
    List<String> harshIn,
    int usual,
    int harsh,
    int longest,
    int longestHarsh,
    Source source) {

  /**
   * @throws IllegalArgumentException when the figures contradict each other
   */
  Interval {
    if (harsh <= 0 || harsh > usual || usual > longest) {
      throw new IllegalArgumentException(
          "harsh %d, usual %d and longest %d must rise from above 0"
              .formatted(harsh, usual, longest));
    }
    if (longestHarsh < harsh || longestHarsh > longest) {
      throw new IllegalArgumentException(
          "longest_harsh %d must lie from harsh %d to longest %d"
              .formatted(longestHarsh, harsh, longest));
    }
  }

  boolean harsh(String surroundings) {
    return harshIn.contains(surroundings);
  }

  int usualDays(String surroundings) {
    return harsh(surroundings) ? harsh : usual;
  }

  int longestDays(String surroundings) {
    return harsh(surroundings) ? longestHarsh : longest;
  }
}
