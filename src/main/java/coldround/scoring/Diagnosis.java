package coldround.scoring;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The derived figures of a unit that an answer shows, or what is missing for each. */
final class Diagnosis {

  private static final String NO_SPLIT =
      "a visit with head pressure and ambient while the condenser runs free";

  private Diagnosis() {}

  static List<Diagnostic> of(
      Evidence evidence,
      CoilState coil,
      TripState trip,
      FaultState faults,
      ElectricalState electrical,
      LeakState leak) {
    List<Diagnostic> figures = new ArrayList<>();
    String noSplit = noSplit(coil);
    Optional<SplitReading> latest = coil.latestSplit();
    figures.add(figure("condensingTemperature", coil.condensingC(), Measure.DEG_C, noSplit));
    figures.add(
        figure(
            "condensingSplit",
            latest.map(SplitReading::splitK).orElse(OptionalDouble.empty()),
            Measure.DELTA_K,
            noSplit));
    figures.add(
        figure(
            "splitAboveClean",
            coil.splitKnown() ? OptionalDouble.of(coil.excessK()) : OptionalDouble.empty(),
            Measure.DELTA_K,
            noSplit));
    figures.add(expectedHead(evidence, coil, noSplit));
    figures.add(
        figure(
            "foulingRate", OptionalDouble.of(coil.foulingKPerDay()), Measure.DELTA_K_PER_DAY, ""));
    String noTrip = trip.missing().map(Diagnosis::told).orElse("");
    figures.add(figure("tripAmbient", trip.tripAmbientC(), Measure.DEG_C, noTrip));
    figures.add(figure("tripMargin", trip.marginK(), Measure.DELTA_K, noTrip));
    figures.add(
        figure(
            "voltageImbalance",
            electrical.imbalancePercent(),
            Measure.PERCENT,
            "a visit with all three line voltages; single-phase units have none"));
    figures.add(
        figure(
            "fanMotorLoad",
            worstFan(electrical),
            Measure.PERCENT,
            "the current of a condenser fan motor, and its nameplate amps in the equipment list"));
    figures.add(
        figure(
            "expectedFaultsNextYear",
            OptionalDouble.of(faults.expectedNextYear()),
            Measure.PER_YEAR,
            ""));
    figures.add(
        figure(
            "annualLeakRate",
            leak.percentPerYear(),
            Measure.PERCENT_PER_YEAR,
            leak.chargeKg().isEmpty()
                ? "the full charge of the unit in the equipment list"
                : "an addition of refrigerant to compute from"));
    return figures;
  }

  private static String noSplit(CoilState coil) {
    int last = coil.readings().size() - 1;
    return last < 0
        ? NO_SPLIT
        : coil.readings().get(last).leftOut().map(Diagnosis::told).orElse(NO_SPLIT);
  }

  private static String told(Reason reason) {
    return reason.text(MeasureSystem.US);
  }

  private static Diagnostic figure(
      String name, OptionalDouble value, Measure measure, String missing) {
    return value.isPresent()
        ? new Diagnostic(name, new Quantity(value.getAsDouble(), measure), "")
        : new Diagnostic(name, null, missing);
  }

  /** Head pressure that a clean coil would have at the ambient of the latest reading. */
  private static Diagnostic expectedHead(Evidence evidence, CoilState coil, String missing) {
    Optional<SplitReading> latest = coil.latestSplit();
    if (latest.isEmpty()) {
      return new Diagnostic("expectedHead", null, missing);
    }
    double condensingC = latest.get().ambientC().orElseThrow() + coil.clean().splitK();
    double kpa = evidence.gas().pressureKpa(condensingC);
    return Double.isNaN(kpa)
        ? new Diagnostic("expectedHead", null, "a clean condensing temperature within the table")
        : new Diagnostic(
            "expectedHead", new Quantity(kpa - evidence.atmosphereKpa(), Measure.KPAG), "");
  }

  /** Load of the condenser fan that is furthest from its nameplate. */
  private static OptionalDouble worstFan(ElectricalState electrical) {
    double worst = Double.NaN;
    for (FanMotor fan : electrical.fans()) {
      double load = fan.loadPercent().orElse(Double.NaN);
      if (fan.quantity().equals("condenser_fan")
          && !Double.isNaN(load)
          && !(Math.abs(load - 100) <= Math.abs(worst - 100))) {
        worst = load;
      }
    }
    return Double.isNaN(worst) ? OptionalDouble.empty() : OptionalDouble.of(worst);
  }
}
