package coldround.scoring;

import coldround.fleet.Reading;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.SaturationCurve;
import coldround.scoring.GradeShares.GradeShare;
import coldround.scoring.statistics.FaultTally;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The history of a unit with one more thing on record, at the value expected of it now. */
final class SupposedEvidence {

  // behind every number of the same day: it is the last thing known
  private static final String NUMBER = "\uffff";

  private final UnitHistory all;
  private final Assessment now;
  private final ScoringRules rules;

  SupposedEvidence(UnitHistory all, Assessment now, ScoringRules rules) {
    this.all = all;
    this.now = now;
    this.rules = rules;
  }

  /** On a day as hot as the site is designed for, where no control holds the head pressure. */
  Optional<Visit> split(SaturationCurve curve) {
    double ambientC = rules.limits().value(LimitName.AMBIENT_LEAST);
    for (MonthMargin month : now.trip().months()) {
      ambientC = Math.max(ambientC, month.designAmbientC());
    }
    try {
      double kpa = curve.midpointPressureKpa(ambientC + now.coil().splitK());
      return Optional.of(
          visit(
              now.asOf(),
              List.of(
                  Reading.taken("ambient", new Quantity(ambientC, Measure.DEG_C)),
                  Reading.taken("head_pressure", new Quantity(kpa, Measure.KPA))),
              Map.of()));
    } catch (OutsideTable e) {
      // a gas that does not condense at that temperature has no split to read
      return Optional.empty();
    }
  }

  Visit grade() {
    double share = now.coil().excessK() / rules.limits().value(LimitName.EXCESS_FULL);
    GradeShare nearest = rules.grades().nearest(share);
    return visit(now.asOf(), List.of(), Map.of("condenser_coil", nearest.grade()));
  }

  /** A visit that opens the record so many days ago; empty where it is open already. */
  Optional<Visit> seenBefore(double days) {
    LocalDate day = now.asOf().minusDays((long) days);
    LocalDate installed = all.unit().installed();
    boolean tooNew = installed != null && installed.isAfter(day);
    return tooNew || now.faults().observedYears() * FaultTally.DAYS_A_YEAR >= days
        ? Optional.empty()
        : Optional.of(visit(day, List.of(), Map.of()));
  }

  private static Visit visit(LocalDate day, List<Reading> readings, Map<String, String> findings) {
    return new Visit(NUMBER, day, "", "", readings, findings, List.of(), List.of(), "");
  }

  UnitHistory with(Visit visit) {
    List<Visit> visits = new ArrayList<>(all.visits());
    visits.add(visit);
    return new UnitHistory(all.site(), all.unit(), visits, all.reportedFaults());
  }

  UnitHistory with(LocalDate installed) {
    return with(all.unit().refrigerant(), installed);
  }

  UnitHistory with(Refrigerant gas) {
    return with(gas.designation(), all.unit().installed());
  }

  private UnitHistory with(String refrigerant, LocalDate installed) {
    Unit unit = all.unit();
    Unit supposed =
        new Unit(
            unit.id(),
            unit.customer(),
            unit.site(),
            unit.tag(),
            unit.kind(),
            unit.machine(),
            unit.maker(),
            unit.model(),
            unit.serial(),
            installed,
            refrigerant,
            unit.condenserPlace(),
            unit.retired(),
            unit.plate());
    return new UnitHistory(all.site(), supposed, all.visits(), all.reportedFaults());
  }
}
