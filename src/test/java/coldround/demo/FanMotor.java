package coldround.demo;

/** A fan motor whose current leaves its nameplate before it fails. */
final class FanMotor {

  private final double ratedA;
  private final double drift;
  final Wear wear;

  /**
   * @param drift change of its current in the end as a share of the nameplate: up with bad
   *     bearings, down with a weak capacitor
   */
  FanMotor(double ratedA, double drift, Wear wear) {
    this.ratedA = ratedA;
    this.drift = drift;
    this.wear = wear;
  }

  double amps(Chance chance) {
    return ratedA * (0.93 + drift * wear.failing() + chance.spread(0.015));
  }

  /** Share of its air that is missing. */
  double airMissing() {
    return 0.5 * wear.failing();
  }
}
