package coldround.demo;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What a unit is like inside on a day: what nobody sees, and every reading follows from. */
final class State {

  private static final double EVAPORATOR_KELVIN_A_DAY = 0.12 / 30.4;
  private static final double KELVIN_PER_FAHRENHEIT = 1 / 1.8;

  final Fouling condenser;
  final Fouling evaporator;
  final List<FanMotor> condenserFans;
  final List<FanMotor> evaporatorFans;
  final Wear contactor;
  final Wear gasket;
  final Wear drain;
  final Wear wiring;
  final Wear defrost;
  final Charge charge;
  private final double cleanSplitK;
  private final double alwaysAboveK;
  private final double ageYears;
  private final Chance chance;

  State(Plant plant, double foulingKelvinADay, Chance chance) {
    this.chance = chance;
    this.ageYears = ageYears(plant);
    double dirtyDays = ageYears == 0 ? 0 : chance.between(0.4, 1) * daysSinceCleaning(plant.care());
    condenser = new Fouling(dirtyDays * foulingKelvinADay, foulingKelvinADay);
    evaporator = new Fouling(dirtyDays * EVAPORATOR_KELVIN_A_DAY, EVAPORATOR_KELVIN_A_DAY);
    Model model = plant.model();
    condenserFans = fans(plant, model.condenserFans(), model.condenserFanA());
    evaporatorFans = fans(plant, model.evaporatorFans(), model.evaporatorFanA());
    contactor = wear(plant.has("imbalance") ? 3 : 8);
    gasket = wear(plant.care() == Care.NEGLECTED ? 4.5 : 7);
    drain = wear(plant.care() == Care.NEGLECTED ? 4 : 9);
    wiring = wear(25);
    defrost = wear(plant.has("defrost-returns") ? 1.6 : 11);
    charge = new Charge(lossAYear(plant));
    cleanSplitK = model.splitF() * KELVIN_PER_FAHRENHEIT + chance.spread(0.7);
    alwaysAboveK = plant.has("overcharged") ? 3.5 : plant.has("recirculation") ? 3 : 0;
  }

  private static double ageYears(Plant plant) {
    return plant
        .installed()
        .map(day -> Math.max(0, ChronoUnit.DAYS.between(day, Story.FIRST_DAY) / 365.25))
        .orElse(12.0);
  }

  private static double daysSinceCleaning(Care care) {
    return switch (care) {
      case KEPT -> 90;
      case USUAL -> 200;
      default -> 280;
    };
  }

  private double lossAYear(Plant plant) {
    if (!plant.has("slow-leak")) {
      return 0;
    }
    return plant.has("leak-returns") ? chance.between(0.55, 0.8) : chance.between(0.25, 0.35);
  }

  private List<FanMotor> fans(Plant plant, int count, double ratedA) {
    return IntStream.range(0, count).mapToObj(i -> fan(plant.has("fan-drift"), i, ratedA)).toList();
  }

  private FanMotor fan(boolean tired, int number, double ratedA) {
    double drift = chance.happens(0.6) ? 0.3 : -0.4;
    Wear wear = tired && number == 0 ? new Wear(0.62, 7) : wear(9);
    return new FanMotor(ratedA, drift, wear);
  }

  /** A part that has lived for some time; on a young unit no longer than the unit itself. */
  private Wear wear(double lifeYears) {
    double life = lifeYears * chance.between(0.75, 1.25);
    return new Wear(chance.between(0, Math.min(0.85, ageYears / life)), life);
  }

  void day() {
    condenser.day();
    evaporator.day();
    charge.day();
    Stream.of(contactor, gasket, drain, wiring, defrost).forEach(Wear::day);
    Stream.concat(condenserFans.stream(), evaporatorFans.stream()).forEach(fan -> fan.wear.day());
  }

  /** Condensing temperature over the air entering the condenser, now. */
  double splitK() {
    double load = chance.spread(0.5);
    double air = 6 * airMissing(condenserFans);
    double gas = 8 * Math.max(0, charge.missing());
    return cleanSplitK + alwaysAboveK + condenser.riseK() + air - gas + load;
  }

  /** Evaporator air over evaporating temperature, beyond the design figure. */
  double evaporatorAboveK() {
    double ice = 5 * Math.max(gasket.failing() * 0.3, defrost.failing());
    return evaporator.riseK()
        + ice
        + 5 * airMissing(evaporatorFans)
        + 18 * Math.max(0, charge.missing() - 0.04);
  }

  /** What the box is warmer than its setpoint for want of capacity or a tight door. */
  double boxAboveK() {
    double gas = 18 * Math.max(0, charge.missing() - 0.1);
    double head = 0.12 * Math.max(0, condenser.riseK() - 8);
    return gas + head + gasket.failing() + 2 * defrost.failing() + 2 * airMissing(evaporatorFans);
  }

  private static double airMissing(List<FanMotor> fans) {
    return fans.stream().mapToDouble(FanMotor::airMissing).average().orElse(0);
  }
}
