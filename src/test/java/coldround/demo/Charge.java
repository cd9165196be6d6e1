package coldround.demo;

/** Refrigerant in a circuit as a share of the nameplate charge. */
final class Charge {

  private double share = 1;
  private double lossADay;

  Charge(double lossAYear) {
    this.lossADay = lossAYear / 365.25;
  }

  void day() {
    share -= lossADay;
  }

  double missing() {
    return 1 - share;
  }

  void fill() {
    share = 1;
  }

  void seal() {
    lossADay = 0;
  }
}
