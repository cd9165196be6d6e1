package coldround.upkeep;

import coldround.fleet.Unit;
import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Inputs;
import coldround.reason.Reason;
import coldround.refrigerant.ChargedCircuit;
import coldround.refrigerant.ExactMass;
import coldround.refrigerant.InspectionDuty;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.UnitCategories;
import coldround.scoring.LeakState;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Leak inspection at the intervals of the law. */
final class LegalLeakRule implements UpkeepRule {

  @Override
  public List<Ask> asks(UnitCase unit) {
    Optional<ChargedCircuit> circuit = circuit(unit);
    if (circuit.isEmpty()) {
      return List.of();
    }
    boolean exceeded = unit.assessment().leak().over();
    InspectionDuty duty = unit.tables().inspections().duty(circuit.get(), exceeded, unit.today());
    if (duty.everyMonths().isEmpty()) {
      return List.of();
    }
    LocalDate from = from(unit, exceeded);
    LocalDate date = from == null ? unit.soon() : from.plusMonths(duty.everyMonths().getAsInt());
    return List.of(Ask.strictly(TaskCode.LEAK, date, dated(duty.reason(), from, date)));
  }

  private static Optional<ChargedCircuit> circuit(UnitCase unit) {
    Unit plate = unit.unit();
    Quantity charge = plate.plate("charge").orElse(null);
    Refrigerant gas =
        unit.tables().refrigerants().find(unit.assessment().supply().refrigerant()).orElse(null);
    UnitCategories.Category category = unit.tables().categories().find(plate.kind()).orElse(null);
    if (charge == null
        || charge.measure().dimension() != Dimension.MASS
        || charge.value() <= 0
        || gas == null
        || category == null) {
      return Optional.empty();
    }
    return Optional.of(
        ChargedCircuit.of(gas, ExactMass.kg(charge), category.leakCategory(), unit.jurisdiction()));
  }

  /**
   * The last inspection; before any, the addition that went over the threshold, else the day the
   * unit is on record from.
   */
  private static LocalDate from(UnitCase unit, boolean exceeded) {
    LeakState leak = unit.assessment().leak();
    LocalDate inspected =
        WorkRecord.later(unit.done(TaskCode.LEAK), leak.lastInspected().orElse(null));
    List<LeakState.Addition> additions = leak.additions();
    if (inspected != null || !exceeded || additions.isEmpty()) {
      return inspected != null ? inspected : unit.countedFrom(TaskCode.LEAK);
    }
    return additions.get(additions.size() - 1).date();
  }

  private static Reason dated(Reason duty, LocalDate from, LocalDate date) {
    Inputs facts =
        Inputs.plus(
            duty.inputs(), "countedFrom", from == null ? "nothing on record" : from, "date", date);
    String template = duty.template() + "; counted from {countedFrom} it is due on {date}";
    return new Reason(duty.code(), template, facts, duty.source());
  }
}
