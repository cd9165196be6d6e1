package coldround.demo;

import java.util.List;
import java.util.Optional;

/**
 * A breakdown of a day.
 *
 * @param mode failure mode of the fault list
 * @param cause as the office types it, empty where nobody knew
 * @param downtimeH hours out of use, about
 */
record Trouble(String mode, String cause, double downtimeH) {

  private static final List<String> BY_CHANCE =
      List.of("control-failed", "short-cycling", "supply-lost", "box-too-warm", "other");

  /** What goes wrong first, given what the unit is like and how hot the day gets. */
  static Optional<Trouble> today(
      Plant plant, State state, double condensingAtPeakC, double cutoutC) {
    if (condensingAtPeakC > cutoutC) {
      return trouble("high-head-lockout", dirtCause(state), 3);
    }
    return worn(plant, state).or(() -> charge(plant, state));
  }

  private static String dirtCause(State state) {
    return state.condenser.riseK() > 4 ? "condenser dirty" : "hot spell";
  }

  private static Optional<Trouble> worn(Plant plant, State state) {
    if (anyFailed(state.condenserFans)) {
      return trouble("condenser-fan-failed", "motor bearings", 6);
    }
    if (anyFailed(state.evaporatorFans)) {
      return trouble("evaporator-fan-failed", "motor winding", 5);
    }
    if (state.contactor.failed()) {
      return plant.has("imbalance")
          ? trouble("compressor-no-start", "uneven supply voltage", 7)
          : trouble("contactor-failed", "points burnt", 4);
    }
    return box(plant.model(), state);
  }

  private static boolean anyFailed(List<FanMotor> fans) {
    return fans.stream().anyMatch(fan -> fan.wear.failed());
  }

  private static Optional<Trouble> box(Model model, State state) {
    if (model.hasDoor() && state.gasket.failed()) {
      return model.freezer()
          ? trouble("coil-iced", "door gasket torn", 9)
          : trouble("door-not-sealing", "gasket torn", 0);
    }
    if (model.cools() && state.drain.failed()) {
      return trouble("drain-blocked", "slime in the trap", 2);
    }
    if (model.freezer() && state.defrost.failed()) {
      return trouble("defrost-failed", "", 10);
    }
    return Optional.empty();
  }

  private static Optional<Trouble> charge(Plant plant, State state) {
    double limit = plant.has("leak-returns") ? 0.24 : 0.2;
    if (state.charge.missing() < limit) {
      return Optional.empty();
    }
    return plant.model().lowCutoutPsig().isPresent() && state.condenser.riseK() < 5
        ? trouble("low-pressure-trip", "charge short", 5)
        : trouble("refrigerant-leak", "oil at a joint", 5);
  }

  /** What comes out of the blue. */
  static Optional<Trouble> byChance(Plant plant, Chance chance) {
    double aYear = plant.care() == Care.KEPT ? 0.05 : plant.care() == Care.USUAL ? 0.1 : 0.2;
    return chance.happens(aYear / 365.25)
        ? trouble(chance.pick(BY_CHANCE), "", chance.between(1, 6))
        : Optional.empty();
  }

  static Optional<Trouble> trouble(String mode, String cause, double downtimeH) {
    return Optional.of(new Trouble(mode, cause, downtimeH));
  }
}
