package coldround.demo;

import java.util.Locale;
import java.util.Set;

/** How a unit is looked after. */
enum Care {
  KEPT(Set.of(0, 1, 2, 3), 2, 1, 0.8, 0.96),
  USUAL(Set.of(2, 3), 3.5, 0.95, 0.95, 0.85),
  NEGLECTED(Set.of(2), 13, 0.6, 2, 0.6),
  THIN(Set.of(), 99, 1, 2, 0.25),
  UNTOUCHED(Set.of(), 99, 1, 2, 0);

  private static final int ROUND_OF_THE_SURVEY = 6;

  /** Rounds of the year on which the unit is looked at: autumn, winter, spring, summer. */
  private final Set<Integer> roundsOfYear;

  /** Rise of the split at which the condenser is cleaned on a planned visit. */
  final double cleanAtK;

  /** Share of the dirt that a cleaning takes off. */
  final double cleaningShare;

  /** Wear at which a part is replaced before it fails; over 1 is never. */
  final double replaceAt;

  /** Share of the readings that get taken. */
  final double thoroughness;

  Care(
      Set<Integer> roundsOfYear,
      double cleanAtK,
      double cleaningShare,
      double replaceAt,
      double thoroughness) {
    this.roundsOfYear = roundsOfYear;
    this.cleanAtK = cleanAtK;
    this.cleaningShare = cleaningShare;
    this.replaceAt = replaceAt;
    this.thoroughness = thoroughness;
  }

  static Care of(String text) {
    return valueOf(text.toUpperCase(Locale.ROOT));
  }

  boolean attends(int round) {
    return this == THIN ? round == ROUND_OF_THE_SURVEY : roundsOfYear.contains(round % 4);
  }

  /** Nobody calls for these: the contractor knows them from the list alone. */
  boolean calls() {
    return this != THIN && this != UNTOUCHED;
  }
}
