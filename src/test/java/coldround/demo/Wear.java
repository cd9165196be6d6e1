package coldround.demo;

/** A part that wears from 0, new, to 1, failed. */
final class Wear {

  private double level;
  private final double perDay;

  Wear(double level, double lifeYears) {
    this.level = level;
    this.perDay = 1 / (lifeYears * 365.25);
  }

  void day() {
    level += perDay;
  }

  boolean failed() {
    return level >= 1;
  }

  boolean over(double share) {
    return level >= share;
  }

  /** How far into the last quarter of its life, 0 to 1: what shows before it fails. */
  double failing() {
    return Math.min(1, Math.max(0, (level - 0.75) / 0.25));
  }

  String grade() {
    return level >= 0.88 ? "bad" : level >= 0.62 ? "worn" : "good";
  }

  void renew() {
    level = 0;
  }

  /** A repair that holds for some days only. */
  void mendFor(int days) {
    level = 1 - days * perDay;
  }
}
