package coldround.demo;

import java.util.List;

/** Takes the readings of a visit from the state of a unit, as far as the technician gets to it. */
final class Instruments {

  private static final double KELVIN_PER_FAHRENHEIT = 1 / 1.8;

  private final Plant plant;
  private final Model model;
  private final State state;
  private final Gauge gauge;
  private final Story story;
  private final Chance chance;

  Instruments(Plant plant, State state, Gauge gauge, Story story, Chance chance) {
    this.plant = plant;
    this.model = plant.model();
    this.state = state;
    this.gauge = gauge;
    this.story = story;
    this.chance = chance;
  }

  /** All a technician reads while the unit runs. */
  void read(Attendance visit, double outdoorC) {
    double airC = plant.site().condenserAirC(plant.where(), outdoorC);
    take(visit, "ambient", Figures.fahrenheit(airC));
    pressures(visit, outdoorC, airC);
    box(visit);
    fans(visit, "condenser_fan", state.condenserFans);
    fans(visit, "evaporator_fan", state.evaporatorFans);
    voltages(visit);
  }

  /** What can be read of a unit that does not run. */
  void readStopped(Attendance visit, double outdoorC) {
    double airC = plant.site().condenserAirC(plant.where(), outdoorC);
    take(visit, "ambient", Figures.fahrenheit(airC));
    notTaken(visit, "head_pressure", "stopped");
    box(visit);
    voltages(visit);
  }

  private void pressures(Attendance visit, double outdoorC, double airC) {
    if (!model.ports()) {
      notTaken(visit, "head_pressure", "ports");
      notTaken(visit, "suction_pressure", "ports");
      compressor(visit, airC + state.splitK());
    } else if (model.airConditioning() && outdoorC < 14) {
      String why = model.kind().equals("heat-pump") ? "heating" : "season";
      notTaken(visit, "head_pressure", why);
    } else if (model.transcritical()) {
      take(visit, "head_pressure", Figures.whole(1120 + 9 * outdoorC + chance.spread(10)));
      compressor(visit, 45);
    } else {
      circuit(visit, airC);
    }
  }

  private void circuit(Attendance visit, double airC) {
    double headPsig = headPsig(airC + state.splitK());
    if (headPsig >= model.cutoutPsig().orElse(999)) {
      visit.cells.put("head_pressure", "n/t: trips before it settles");
      return;
    }
    double condensingC = gauge.condensingC(headPsig);
    double evaporatingC = evaporatingC();
    take(visit, "head_pressure", Figures.whole(headPsig));
    suction(visit, gauge.suctionPsig(evaporatingC));
    take(visit, "liquid_line", Figures.fahrenheit(gauge.bubbleC(condensingC) - subcoolingK()));
    take(visit, "suction_line", Figures.fahrenheit(evaporatingC + superheatK()));
    compressor(visit, condensingC);
  }

  private void suction(Attendance visit, double psig) {
    if (psig > model.lowCutoutPsig().orElse(0)) {
      take(visit, "suction_pressure", Figures.whole(psig));
    } else {
      visit.cells.put("suction_pressure", "n/t: goes off on low pressure");
    }
  }

  /** Head-pressure control holds the head up in the cold. */
  private double headPsig(double condensingC) {
    double held = model.headControlPsig().orElse(0) + chance.spread(2);
    return Math.max(gauge.headPsig(Math.min(condensingC, Gauge.HOTTEST_C)), held);
  }

  private double evaporatingC() {
    double tdK = model.tdF() * KELVIN_PER_FAHRENHEIT + chance.spread(0.4);
    return enteringC() - tdK - state.evaporatorAboveK();
  }

  /** What the evaporator cools: a box, a room, water. */
  private double enteringC() {
    if (model.cools()) {
      return boxC();
    }
    return switch (model.kind()) {
      case "chiller" -> 6.7;
      case "ice-machine" -> 1.1;
      default -> 23.9;
    };
  }

  private double boxC() {
    double setpointC = (model.setpointF().orElseThrow() - 32) * KELVIN_PER_FAHRENHEIT;
    return setpointC + 0.6 + state.boxAboveK();
  }

  private double superheatK() {
    double usual = model.freezer() ? 8 : 10.5;
    return usual + 42 * Math.max(0, state.charge.missing() - 0.04) + chance.spread(0.9);
  }

  private double subcoolingK() {
    double usual = plant.has("overcharged") ? 10.5 : 6;
    double left = usual - 28 * Math.max(0, state.charge.missing());
    return Math.max(0.6, left + chance.spread(0.6));
  }

  private void compressor(Attendance visit, double condensingC) {
    double share = 0.72 + 0.007 * (condensingC - 42) - 0.6 * Math.max(0, state.charge.missing());
    double amps = model.compressorA() * (share + chance.spread(0.015));
    take(visit, "compressor", Figures.amps(amps));
  }

  private void box(Attendance visit) {
    if (model.cools()) {
      double boxC = boxC() + chance.spread(0.4);
      take(visit, "box", Figures.fahrenheit(boxC));
      if (plant.model().kind().startsWith("walk-in")) {
        take(visit, "evaporator_in", Figures.fahrenheit(boxC + 0.3));
        take(visit, "evaporator_out", Figures.fahrenheit(boxC - 2.6 - chance.spread(0.3)));
      }
    }
  }

  /** One motor goes into the row, several get rows of their own. */
  private void fans(Attendance visit, String quantity, List<FanMotor> fans) {
    if (fans.size() == 1) {
      take(visit, quantity, Figures.amps(fans.get(0).amps(chance)));
    }
    for (int i = 0; fans.size() > 1 && i < fans.size(); i++) {
      if (chance.happens(plant.care().thoroughness)) {
        visit.singles.add(single(quantity, i + 1, fans.get(i)));
      }
    }
  }

  private Attendance.Single single(String quantity, int number, FanMotor fan) {
    String part = "fan " + number;
    if (chance.happens(0.03)) {
      String why = story.whyNotTaken(quantity, chance).orElseThrow();
      return new Attendance.Single(quantity, part, "", "", why);
    }
    return new Attendance.Single(quantity, part, Figures.amps(fan.amps(chance)), "A", "");
  }

  private void voltages(Attendance visit) {
    double volts = model.supplyV() * (1.012 + chance.spread(0.006));
    if (model.phases() == 1) {
      take(visit, "voltage_l1_l2", Figures.whole(volts));
      return;
    }
    if (chance.happens(plant.care().thoroughness)) {
      double low = plant.has("imbalance") ? 1 - chance.between(0.042, 0.052) : 1;
      visit.cells.put("voltage_l1_l2", Figures.whole(volts * (1 + chance.spread(0.0025))));
      visit.cells.put("voltage_l2_l3", Figures.whole(volts * (low + chance.spread(0.0025))));
      visit.cells.put("voltage_l1_l3", Figures.whole(volts * (1 + chance.spread(0.0025))));
    }
  }

  private void take(Attendance visit, String column, String value) {
    // what everybody looks at first is seldom left out
    boolean first = column.equals("ambient") || column.equals("head_pressure");
    double thoroughness = plant.care().thoroughness;
    if (chance.happens(first ? Math.sqrt(thoroughness) : thoroughness)) {
      visit.cells.put(column, value);
    } else if (chance.happens(0.2)) {
      notTaken(visit, column, column);
    }
  }

  private void notTaken(Attendance visit, String column, String about) {
    story.whyNotTaken(about, chance).ifPresent(reason -> visit.cells.put(column, "n/t: " + reason));
  }
}
