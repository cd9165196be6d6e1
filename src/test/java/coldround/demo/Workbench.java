package coldround.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What technicians do to a unit on a visit, and how they write it down. */
final class Workbench {

  private final Story story;
  private final Plant plant;
  private final State state;
  private final Instruments instruments;
  private final Repairs repairs;
  private final Chance chance;

  Workbench(Story story, Plant plant, State state, Gauge gauge, Chance chance) {
    this.story = story;
    this.plant = plant;
    this.state = state;
    this.chance = chance;
    this.instruments = new Instruments(plant, state, gauge, story, chance);
    this.repairs = new Repairs(plant, state, chance);
  }

  /** A look at the unit, with its readings. */
  Attendance inspection(LocalDate day, double outdoorC) {
    Attendance visit = visit(day, purpose());
    findings(visit, 1);
    note(visit, state.condenser.riseK() < 1.6 ? "fine" : state.condenser.grade());
    upkeep(visit);
    instruments.read(visit, outdoorC);
    visit.work.add("inspected");
    return visit;
  }

  private String purpose() {
    return plant.care() == Care.THIN ? "survey" : "planned";
  }

  /** A planned visit that cleans: grades as found, readings as left. */
  Attendance cleaning(LocalDate day, double outdoorC) {
    Attendance visit = visit(day, "planned");
    findings(visit, 1);
    state.condenser.clean(cleaningShare());
    visit.work.add("condenser-coil-cleaned");
    note(visit, plant.has("bad-cleaning") ? "cleaned-badly" : "cleaned");
    upkeep(visit);
    instruments.read(visit, outdoorC);
    return visit;
  }

  private double cleaningShare() {
    return plant.has("bad-cleaning") ? chance.between(0.45, 0.65) : plant.care().cleaningShare;
  }

  /** A call: readings as found for what still runs, then the repair. */
  Attendance breakdown(LocalDate day, Trouble trouble, double outdoorC) {
    Attendance visit = visit(day, "breakdown");
    visit.faults.add(trouble.mode());
    findings(visit, 0.6);
    if (repairs.runs(trouble)) {
      instruments.read(visit, outdoorC);
    } else {
      instruments.readStopped(visit, outdoorC);
    }
    note(visit, trouble.mode());
    repairs.mend(visit, trouble);
    return visit;
  }

  private Attendance visit(LocalDate day, String purpose) {
    return new Attendance(plant, day, story.crew().whoGoes(plant, chance), purpose);
  }

  private void note(Attendance visit, String occasion) {
    if (chance.happens(0.7)) {
      story.note(occasion, chance).ifPresent(visit.notes::add);
    }
  }

  private void findings(Attendance visit, double share) {
    grade(visit, "condenser_coil", state.condenser.grade(), share);
    grade(visit, "contactor", state.contactor.grade(), share * 0.8);
    grade(visit, "wiring", state.wiring.grade(), share * 0.6);
    if (plant.model().airCoil()) {
      grade(visit, "evaporator_coil", state.evaporator.grade(), share);
    }
    if (plant.model().cools()) {
      grade(visit, "drain", state.drain.grade(), share * 0.8);
    }
    if (plant.model().hasDoor()) {
      grade(visit, "door", state.gasket.grade(), share);
    }
    oddities(visit);
  }

  private void grade(Attendance visit, String part, String grade, double share) {
    if (chance.happens(share * plant.care().thoroughness)) {
      visit.cells.put(part, grade);
    }
  }

  private void oddities(Attendance visit) {
    for (String quirk : List.of("recirculation", "overcharged", "imbalance")) {
      if (plant.has(quirk) && chance.happens(0.35)) {
        note(visit, quirk);
      }
    }
    List<FanMotor> fans = new ArrayList<>(state.condenserFans);
    fans.addAll(state.evaporatorFans);
    if (fans.stream().anyMatch(fan -> fan.wear.failing() > 0.3)) {
      note(visit, "fan-worn");
    }
  }

  /** What gets done on the side on a planned visit. */
  private void upkeep(Attendance visit) {
    boolean dusty = plant.model().airCoil() && state.evaporator.riseK() > 1.6;
    if (dusty && plant.care() != Care.NEGLECTED) {
      state.evaporator.clean(0.9);
      visit.work.add("evaporator-coil-cleaned");
    }
    repairs.beforeItFails(visit);
  }
}
