package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import coldround.quantity.MeasureSystem;
import java.util.List;
import org.junit.jupiter.api.Test;

class NextReadingsTest {

  private static final NextReadings NEXT =
      new NextReadings(Rules.SCORER, Rules.SCORING, Rules.GASES.refrigerants());

  private static Assessment assess(UnitHistory history) {
    return Rules.SCORER.assess(history, UnitFile.TODAY);
  }

  private static List<NextReading> next(UnitHistory history) {
    return NEXT.of(history, assess(history));
  }

  private static List<String> names(UnitHistory history) {
    return next(history).stream().map(NextReading::evidence).toList();
  }

  private static NextReading named(UnitHistory history, String evidence) {
    return next(history).stream()
        .filter(reading -> reading.evidence().equals(evidence))
        .findFirst()
        .orElseThrow();
  }

  private static double width(UnitHistory history) {
    Condition condition = assess(history).condition();
    return condition.high() - condition.low();
  }

  /** Two years of record, all known but the coil. */
  private static UnitFile known() {
    UnitFile file = UnitFile.of("walk-in-cooler");
    file.visit(800);
    return file;
  }

  @Test
  void aCoilNobodyHasLookedAtWantsASplitOrAGrade() {
    UnitHistory history = known().history();
    assertEquals(
        java.util.Set.of("condensing-split", "condenser-coil-grade"),
        java.util.Set.copyOf(names(history)));
    NextReading split = named(history, "condensing-split");
    String text = split.reason().text(MeasureSystem.US);
    assertTrue(text.contains("60.0 °F or warmer"), text);
    assertTrue(split.reason().source().toString().contains("limits.csv"));
  }

  // what is promised is what comes true when the reading is as expected
  @Test
  void takingTheReadingNarrowsTheRangeAsWasSaid() {
    UnitFile file = known();
    UnitHistory before = file.history();
    NextReading promised = named(before, "condensing-split");
    double expectedF = assess(before).coil().splitK() * 1.8;
    file.visit(0).split(95, expectedF);
    assertEquals(promised.rangePoints(), width(file.history()), 0.11);
    assertEquals(promised.narrowsBy(), width(before) - width(file.history()), 0.11);
  }

  @Test
  void aUnitWithoutDateOfInstallationIsAskedForIt() {
    UnitFile file = known();
    file.installed = null;
    file.visit(1).split(90, 32).found("condenser_coil", "clean");
    assertEquals("installed", names(file.history()).get(0));
  }

  @Test
  void aUnitWithoutRefrigerantIsAskedForIt() {
    UnitFile file = known();
    file.refrigerant = "";
    file.visit(1).found("condenser_coil", "light");
    assertEquals("refrigerant", names(file.history()).get(0));
  }

  @Test
  void aShortRecordAsksForTheFilesOfTheContractorBefore() {
    UnitFile file = UnitFile.of("walk-in-cooler");
    file.visit(3).split(90, 32).found("condenser_coil", "clean");
    assertEquals("fault-record", names(file.history()).get(0));
    assertTrue(names(known().history()).stream().noneMatch("fault-record"::equals));
  }

  @Test
  void theBestComesFirstAndNothingIsProposedThatDoesNotHelp() {
    UnitFile file = UnitFile.of("reach-in-cooler");
    file.installed = null;
    file.refrigerant = "";
    List<NextReading> next = next(file.history());
    double before = Double.MAX_VALUE;
    for (NextReading reading : next) {
      assertTrue(reading.narrowsBy() > 0 && reading.narrowsBy() <= before, next.toString());
      before = reading.narrowsBy();
    }
    assertTrue(next.size() >= 3, next.toString());
  }

  @Test
  void aGasThatDoesNotCondenseThereIsNotAskedForASplit() {
    UnitFile file = known();
    file.refrigerant = "R-744";
    assertTrue(names(file.history()).stream().noneMatch("condensing-split"::equals));
  }
}
