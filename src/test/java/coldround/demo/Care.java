package coldround.demo;

import java.util.Locale;

/** How a unit is looked after. */
enum Care {
  KEPT(1, 0, 3, 1, 0.8, 0.96),
  USUAL(2, 0, 6, 0.95, 0.95, 0.85),
  NEGLECTED(4, 2, 13, 0.6, 2, 0.6),
  THIN(99, 5, 99, 1, 2, 0.25),
  UNTOUCHED(999, 998, 99, 1, 2, 0);

  /** Every how many-th round of the site the unit is looked at, and from which round on. */
  private final int everyRounds;

  private final int firstRound;

  /** Rise of the split at which the condenser is cleaned on a planned visit. */
  final double cleanAtK;

  /** Share of the dirt that a cleaning takes off. */
  final double cleaningShare;

  /** Wear at which a part is replaced before it fails; over 1 is never. */
  final double replaceAt;

  /** Share of the readings that get taken. */
  final double thoroughness;

  Care(
      int everyRounds,
      int firstRound,
      double cleanAtK,
      double cleaningShare,
      double replaceAt,
      double thoroughness) {
    this.everyRounds = everyRounds;
    this.firstRound = firstRound;
    this.cleanAtK = cleanAtK;
    this.cleaningShare = cleaningShare;
    this.replaceAt = replaceAt;
    this.thoroughness = thoroughness;
  }

  static Care of(String text) {
    return valueOf(text.toUpperCase(Locale.ROOT));
  }

  boolean attends(int round) {
    return round >= firstRound && (round - firstRound) % everyRounds == 0;
  }

  /** Nobody calls for these: the contractor knows them from the list alone. */
  boolean calls() {
    return this != THIN && this != UNTOUCHED;
  }
}
