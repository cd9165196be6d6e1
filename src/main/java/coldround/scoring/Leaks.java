package coldround.scoring;

import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.refrigerant.ChargedCircuit;
import coldround.refrigerant.ExactMass;
import coldround.refrigerant.GasAddition;
import coldround.refrigerant.LeakMethod;
import coldround.refrigerant.LeakRate;
import coldround.refrigerant.LeakVerdict;
import coldround.refrigerant.RefrigerantRules;
import coldround.refrigerant.UnitCategories;
import coldround.scoring.LeakState.Addition;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Refrigerant added to a unit, its leak rate by the method of the facility, what the law says. */
final class Leaks {

  private static final String LEAK = "refrigerant-leak";
  private static final Source DEFINITION =
      new Source("leak-methods.csv", "*", "40 CFR 82.152 and 84.102, definition of leak rate");
  private static final List<Reason> NOTHING_ADDED =
      List.of(
          new Reason(
              "no-refrigerant-added", "No refrigerant added on record", Facts.of(), DEFINITION));

  private final RefrigerantRules gases;
  private final LeakMethods methods;

  Leaks(ScoringRules rules, RefrigerantRules gases) {
    this.gases = gases;
    this.methods = rules.leakMethods();
  }

  LeakState state(Evidence evidence, FaultState faults) {
    List<GasAddition> additions = additions(evidence);
    Optional<BigDecimal> charge =
        evidence.unit().plate("charge").filter(mass -> mass.value() > 0).map(ExactMass::kg);
    return additions.isEmpty()
        ? without(evidence, faults, charge)
        : with(evidence, faults, charge, additions);
  }

  private LeakState without(Evidence evidence, FaultState faults, Optional<BigDecimal> charge) {
    return new LeakState(
        List.of(),
        kilograms(charge),
        methods.of(evidence.site()),
        OptionalDouble.empty(),
        charge.isPresent() ? OptionalDouble.of(0) : OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        openLeak(evidence, faults),
        inspected(evidence),
        NOTHING_ADDED);
  }

  private LeakState with(
      Evidence evidence,
      FaultState faults,
      Optional<BigDecimal> charge,
      List<GasAddition> additions) {
    LeakMethod method = methods.of(evidence.site());
    Optional<LeakRate> annualizing = charge.flatMap(kg -> annualizing(evidence, additions, kg));
    Optional<LeakRate> rolling =
        charge.map(kg -> gases.leakRates().rollingAverage(additions, kg, evidence.asOf(), null));
    Optional<LeakRate> used = method == LeakMethod.ROLLING_AVERAGE ? rolling : annualizing;
    Optional<LeakVerdict> verdict =
        used.filter(rate -> evidence.gas().refrigerant() != null)
            .map(rate -> judged(evidence, charge.orElseThrow(), rate));
    return new LeakState(
        additions.stream().map(a -> new Addition(a.date(), a.kg().doubleValue())).toList(),
        kilograms(charge),
        method,
        percent(annualizing),
        percent(rolling),
        verdict
            .flatMap(LeakVerdict::thresholdPercent)
            .map(limit -> OptionalDouble.of(limit.doubleValue()))
            .orElse(OptionalDouble.empty()),
        verdict.map(LeakVerdict::over).orElse(false),
        openLeak(evidence, faults),
        inspected(evidence),
        verdict.map(LeakVerdict::reasons).orElseGet(() -> unknown(charge)));
  }

  private static OptionalDouble kilograms(Optional<BigDecimal> charge) {
    return charge.isPresent()
        ? OptionalDouble.of(charge.get().doubleValue())
        : OptionalDouble.empty();
  }

  private Optional<LeakRate> annualizing(
      Evidence evidence, List<GasAddition> additions, BigDecimal charge) {
    return gases.leakRates().annualizing(additions, charge, evidence.asOf());
  }

  private static OptionalDouble percent(Optional<LeakRate> rate) {
    return rate.map(r -> OptionalDouble.of(r.percentPerYear())).orElse(OptionalDouble.empty());
  }

  /** The first fill of another gas is no leak; what was added of the old one is no longer asked. */
  private static List<GasAddition> additions(Evidence evidence) {
    List<GasAddition> additions = new ArrayList<>();
    LocalDate changed = evidence.gasChanged().orElse(null);
    for (VisitFigures figures : evidence.figures()) {
      Visit visit = figures.visit;
      if (changed != null && visit.date().isBefore(changed)) {
        continue;
      }
      for (Reading reading : visit.readings()) {
        if (reading.quantity().equals("refrigerant_added")
            && reading.usable()
            && reading.value().value() > 0) {
          additions.add(addition(evidence, visit, reading.value()));
        }
      }
    }
    return additions;
  }

  private static GasAddition addition(Evidence evidence, Visit visit, Quantity mass) {
    boolean firstFill =
        visit.did("refrigerant-changed") || visit.date().equals(evidence.unit().installed());
    return new GasAddition(visit.date(), ExactMass.kg(mass), !firstFill);
  }

  private LeakVerdict judged(Evidence evidence, BigDecimal charge, LeakRate rate) {
    String category =
        gases
            .categories()
            .find(evidence.kind().kind())
            .map(UnitCategories.Category::leakCategory)
            .orElse("commercial-refrigeration");
    ChargedCircuit circuit =
        ChargedCircuit.of(
            evidence.gas().refrigerant(), charge, category, evidence.site().jurisdiction());
    return gases.leakDuties().judge(rate, circuit);
  }

  private static boolean openLeak(Evidence evidence, FaultState faults) {
    for (int i = faults.events().size() - 1; i >= 0; i--) {
      FaultEvent event = faults.events().get(i);
      if (event.mode().equals(LEAK)) {
        int repaired = evidence.lastWork("leak-repaired");
        return repaired < 0 || evidence.visit(repaired).date().isBefore(event.date());
      }
    }
    return false;
  }

  private static Optional<LocalDate> inspected(Evidence evidence) {
    int inspected = evidence.lastWork("leak-inspected");
    return inspected < 0 ? Optional.empty() : Optional.of(evidence.visit(inspected).date());
  }

  private static List<Reason> unknown(Optional<BigDecimal> charge) {
    String text =
        charge.isEmpty()
            ? "Refrigerant was added, but the full charge is not on record: enter it from the"
                + " nameplate to know the leak rate"
            : "Refrigerant was added, but the unit's refrigerant is not known or nothing of it"
                + " counts as a leak";
    return List.of(new Reason("leak-rate-unknown", text, Facts.of(), DEFINITION));
  }
}
