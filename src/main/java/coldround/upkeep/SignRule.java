package coldround.upkeep;

import coldround.reason.Reason;
import coldround.scoring.CoilState;
import coldround.scoring.ElectricalState;
import coldround.scoring.EvaporatorState;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Inspections by the signs that the assessment found in readings: that a high split is not, or not
 * only, dirt, and that the cold side or the supply is outside its limits. What has a rule of its
 * own here (fans, contactor, imbalance) has no row of that kind.
 */
final class SignRule implements UpkeepRule {

  @Override
  public List<Ask> asks(UnitCase unit) {
    CoilState coil = unit.coil();
    EvaporatorState evaporator = unit.assessment().evaporator();
    ElectricalState electrical = unit.assessment().electrical();
    if (coil.elsewhere().isEmpty()
        && evaporator.findings().isEmpty()
        && electrical.findings().isEmpty()) {
      return List.of();
    }
    List<Ask> asks = new ArrayList<>();
    add(unit, coil.elsewhere(), coil.latestSplit().map(split -> split.date()), asks);
    add(unit, evaporator.findings(), evaporator.date(), asks);
    add(unit, electrical.findings(), electrical.voltageDate(), asks);
    return asks;
  }

  private static void add(
      UnitCase unit, List<Reason> signs, Optional<LocalDate> read, List<Ask> asks) {
    if (read.isEmpty()) {
      return;
    }
    for (Reason sign : signs) {
      for (Trigger trigger : unit.tables().triggers().ofSign(sign.code())) {
        if (!Settled.since(unit, trigger, read.get())) {
          asks.add(Ask.by(trigger.task(), read.get().plusDays(trigger.days()), sign));
        }
      }
    }
  }
}
