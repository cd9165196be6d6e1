package coldround.replacement;

import coldround.fleet.Fault;
import coldround.quantity.Measure;
import coldround.scoring.Assessment;
import coldround.scoring.FaultEvent;
import coldround.upkeep.Costs;
import coldround.upkeep.RunningCost;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What one fault of a unit costs on average over its failure modes, in money of today.
 *
 * @param repair call and repair
 * @param stock goods lost, in units that keep food
 * @param downtime trouble of being without the unit
 * @param ownStock faults on record that say what goods were lost
 * @param dearest mode that costs most in all, its share considered
 */
record FaultCost(double repair, double stock, double downtime, int ownStock, String dearest) {

  static FaultCost of(Economics economics, Assessment assessment) {
    Costs costs = economics.costs();
    String place = assessment.history().site().jurisdiction();
    boolean food = economics.food(assessment.history().unit().kind());
    double repair = 0;
    double lost = 0;
    Map<Double, String> byCost = new TreeMap<>();
    for (String mode : economics.modes().keySet()) {
      String row = costs.has("breakdown", mode) ? mode : "other";
      double share = RunningCost.modeShare(economics.upkeep(), mode, assessment);
      double ofMode = share * costs.of("breakdown", row, place).amount();
      repair += ofMode;
      lost += share * costs.of("stock-chance", row, place).amount();
      byCost.put(ofMode, economics.modes().get(mode));
    }
    String dearest = ((TreeMap<Double, String>) byCost).lastEntry().getValue();
    double usualStock = food ? lost * costs.of("stock", "food", place).amount() : 0;
    return withOwnRecord(economics, assessment, repair, usualStock, dearest);
  }

  /** The unit's own losses weigh as many faults as say something, the table's weigh one. */
  private static FaultCost withOwnRecord(
      Economics economics, Assessment assessment, double repair, double usual, String dearest) {
    List<Fault> known =
        assessment.history().faults().stream().filter(fault -> fault.stockLost() != null).toList();
    double stock = usual;
    for (Fault fault : known) {
      stock += fault.stockLost().value();
    }
    stock /= 1 + known.size();
    Costs costs = economics.costs();
    double hours = costs.of("downtime-hours", "*").amount();
    int said = 1;
    for (Fault fault : assessment.history().faults()) {
      if (fault.downtime() != null) {
        hours += fault.downtime().to(Measure.HOUR).value();
        said++;
      }
    }
    double downtime = hours / said * costs.of("downtime", "*").amount();
    return new FaultCost(repair, stock, downtime, known.size(), dearest);
  }

  /** The same for a unit without a record of its own. */
  static FaultCost usual(Economics economics, Assessment assessment) {
    return of(economics, forgotten(assessment));
  }

  private static Assessment forgotten(Assessment a) {
    var history =
        new coldround.fleet.UnitHistory(
            a.history().site(), a.history().unit(), List.of(), List.of());
    var faults = a.faults();
    var none =
        new coldround.scoring.FaultState(
            List.<FaultEvent>of(),
            List.of(),
            0,
            faults.posterior(),
            0,
            0,
            0,
            0,
            java.util.Optional.empty(),
            false);
    return new Assessment(
        history,
        a.asOf(),
        a.condition(),
        a.age(),
        a.supply(),
        a.coil(),
        a.trip(),
        none,
        a.electrical(),
        a.evaporator(),
        a.leak());
  }

  double total() {
    return repair + stock + downtime;
  }
}
