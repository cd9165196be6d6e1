package coldround.scoring;

import coldround.fleet.Unit;
import coldround.reason.Reason;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.RefrigerantRules;
import coldround.refrigerant.Supply;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** What the law leaves of a unit's refrigerant until the unit's expected end. */
final class SupplyRule {

  /** Units share gas, place and, counted in whole months, remaining life. */
  private record Case(
      String designation, String jurisdiction, LocalDate from, LocalDate to, String kind) {}

  private static final int CASES = 20_000;

  private final RefrigerantRules gases;
  private final Limits limits;
  private final Splits splits;
  private final Map<Case, Supply> supplies = new ConcurrentHashMap<>();

  SupplyRule(ScoringRules rules, RefrigerantRules gases, Splits splits) {
    this.limits = rules.limits();
    this.gases = gases;
    this.splits = splits;
  }

  SupplyState state(Evidence evidence, AgeState age) {
    LocalDate from = evidence.asOf();
    LocalDate to = from.plusMonths(Math.max(1, Math.round(12 * age.remainingYears())));
    Refrigerant gas = evidence.gas().refrigerant();
    return gas == null ? unknown(evidence, from, to) : known(evidence, gas, from, to);
  }

  private SupplyState unknown(Evidence evidence, LocalDate from, LocalDate to) {
    String written = evidence.gas().written();
    Reason reason =
        written.isEmpty()
            ? splits.noCurve(evidence)
            : new Reason(
                "refrigerant-not-in-table",
                "'{written}' is no refrigerant of the tables: check its spelling on the nameplate",
                Facts.of("written", written),
                limits.source(LimitName.SUPPLY_UNKNOWN));
    double share = limits.value(LimitName.SUPPLY_UNKNOWN);
    return new SupplyState("", from, to, share, 0, 1, false, List.of(reason));
  }

  private SupplyState known(Evidence evidence, Refrigerant gas, LocalDate from, LocalDate to) {
    Unit unit = evidence.unit();
    Supply supply =
        supply(
            new Case(gas.designation(), evidence.site().jurisdiction(), from, to, unit.kind()),
            gas);
    boolean known = supply.known();
    List<Reason> reasons = new ArrayList<>(supply.reasons());
    return new SupplyState(
        gas.designation(),
        from,
        to,
        supply.share(),
        known ? supply.share() : 0,
        known ? supply.share() : 1,
        known,
        reasons);
  }

  private Supply supply(Case its, Refrigerant gas) {
    if (supplies.size() > CASES) {
      supplies.clear();
    }
    return supplies.computeIfAbsent(
        its, c -> gases.law().supply(gas, c.jurisdiction, c.from, c.to, true, c.kind));
  }
}
