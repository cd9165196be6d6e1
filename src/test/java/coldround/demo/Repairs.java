package coldround.demo;

import java.util.List;
import java.util.Set;

/** Mending a unit: what is done and what it does to the state. */
final class Repairs {

  private static final Set<String> STOPPED =
      Set.of(
          "condenser-fan-failed",
          "contactor-failed",
          "compressor-no-start",
          "compressor-failed",
          "supply-lost",
          "low-pressure-trip");

  private final Plant plant;
  private final State state;
  private final Chance chance;
  private int additions;
  private int defrostRepairs;

  Repairs(Plant plant, State state, Chance chance) {
    this.plant = plant;
    this.state = state;
    this.chance = chance;
  }

  boolean runs(Trouble trouble) {
    return !STOPPED.contains(trouble.mode());
  }

  void mend(Attendance visit, Trouble trouble) {
    switch (trouble.mode()) {
      case "high-head-lockout" -> visit.work.add("cut-out-reset");
      case "condenser-fan-failed" ->
          replace(visit, state.condenserFans, "condenser-fan-replaced", 1);
      case "evaporator-fan-failed" ->
          replace(visit, state.evaporatorFans, "evaporator-fan-replaced", 1);
      case "contactor-failed", "compressor-no-start" -> contactor(visit);
      case "door-not-sealing", "coil-iced" -> gasket(visit);
      case "drain-blocked" -> drain(visit);
      case "low-pressure-trip", "refrigerant-leak" -> charge(visit);
      case "defrost-failed" -> defrost(visit);
      case "control-failed" -> visit.work.add("control-replaced");
      case "supply-lost" -> visit.work.add("cut-out-reset");
      default -> visit.work.add("inspected");
    }
  }

  /** Parts a good technician changes before they fail. */
  void beforeItFails(Attendance visit) {
    double limit = plant.care().replaceAt;
    replace(visit, state.condenserFans, "condenser-fan-replaced", limit + 0.12);
    replace(visit, state.evaporatorFans, "evaporator-fan-replaced", limit + 0.12);
    if (state.contactor.over(limit)) {
      contactor(visit);
    }
    if (plant.model().hasDoor() && state.gasket.over(limit)) {
      gasket(visit);
    }
    if (plant.model().cools() && state.drain.over(limit - 0.25)) {
      drain(visit);
    }
    if (state.charge.missing() > 0.1 && plant.care() != Care.NEGLECTED) {
      charge(visit);
    }
  }

  private static void replace(Attendance visit, List<FanMotor> fans, String work, double limit) {
    List<FanMotor> due = fans.stream().filter(fan -> fan.wear.over(limit)).toList();
    due.forEach(fan -> fan.wear.renew());
    if (!due.isEmpty()) {
      visit.work.add(work);
    }
  }

  private void contactor(Attendance visit) {
    state.contactor.renew();
    visit.work.add("contactor-replaced");
  }

  private void gasket(Attendance visit) {
    state.gasket.renew();
    visit.work.add("door-repaired");
  }

  private void drain(Attendance visit) {
    state.drain.renew();
    visit.work.add("drain-cleared");
  }

  /**
   * Topped up the first times, then repaired; where the story says so, the repair does not hold.
   */
  private void charge(Attendance visit) {
    double addedLb = plant.model().chargeLb() * state.charge.missing();
    visit.cells.put("refrigerant_added", Figures.rounded(addedLb, 1));
    state.charge.fill();
    additions++;
    visit.work.add("leak-inspected");
    if (additions % 2 == 0) {
      visit.work.add("leak-repaired");
      if (!plant.has("leak-returns")) {
        state.charge.seal();
      }
    }
  }

  private void defrost(Attendance visit) {
    visit.work.add("defrost-repaired");
    defrostRepairs++;
    if (plant.has("defrost-returns") && defrostRepairs % 3 != 0) {
      state.defrost.mendFor(chance.whole(12, 26));
    } else {
      state.defrost.renew();
    }
  }
}
