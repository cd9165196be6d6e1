package coldround.demo;

/** Dirt on a coil, told as the rise of the temperature difference that it causes. */
final class Fouling {

  // a coil that is nearly closed can't get much worse before the cut-out ends it
  private static final double CLOSED_K = 30;

  private double riseK;
  private final double kelvinADay;

  Fouling(double riseK, double kelvinADay) {
    this.riseK = Math.min(riseK, 0.5 * CLOSED_K);
    this.kelvinADay = kelvinADay;
  }

  void day() {
    riseK += kelvinADay * (1 - riseK / CLOSED_K);
  }

  void clean(double share) {
    riseK *= 1 - share;
  }

  double riseK() {
    return riseK;
  }

  String grade() {
    if (riseK < 1.6) {
      return "clean";
    }
    return riseK < 4 ? "light" : riseK < 7 ? "moderate" : riseK < 11 ? "heavy" : "blocked";
  }
}
