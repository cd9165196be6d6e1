package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.FleetFaults.Curve;
import java.util.List;
import org.junit.jupiter.api.Test;

class FleetFaultsTest {

  private static final String CLASS = "remote-refrigeration";

  /** First seen so many days ago. */
  private static UnitFile unit(int seenDaysAgo) {
    UnitFile file = UnitFile.of("walk-in-cooler");
    file.installed = null;
    file.visit(seenDaysAgo);
    return file;
  }

  private static List<Curve> curves(String faultClass, String mode, UnitFile... files) {
    FleetFaults fleet = new FleetFaults(Rules.SCORER, faultClass, mode, FleetFaults.By.CLASS);
    for (UnitFile file : files) {
      fleet.add(file.history(), UnitFile.TODAY);
    }
    return fleet.curves();
  }

  // by hand, as in Nelson (1995): a step is the faults of an age over the units watched up to it
  @Test
  void theCurveRisesByTheFaultsOverTheUnitsStillWatched() {
    UnitFile watchedLong = unit(1000).fault(900, "other", 899).fault(400, "other", 399);
    UnitFile watchedShort = unit(300).fault(200, "drain-blocked", 199);
    Curve curve = curves("", "", watchedLong, watchedShort).get(0);
    assertEquals(CLASS, curve.faultClass());
    assertEquals(2, curve.units());
    assertEquals(3, curve.faults());
    assertEquals(1300 / 365.25, curve.unitYears(), 1e-12);
    assertEquals(2, curve.steps().size());
    assertEquals(100, curve.steps().get(0).age());
    assertEquals(2 / 2.0, curve.steps().get(0).mean(), 1e-12);
    assertEquals(600, curve.steps().get(1).age());
    assertEquals(1 + 1 / 1.0, curve.steps().get(1).mean(), 1e-12);
  }

  @Test
  void oneModeAloneCountsOnlyItsFaults() {
    UnitFile file = unit(1000).fault(900, "other", 899).fault(400, "drain-blocked", 399);
    assertEquals(1, curves("", "drain-blocked", file).get(0).faults());
    assertEquals(0, curves("", "coil-iced", file).get(0).faults());
  }

  @Test
  void classesAreKeptApart() {
    UnitFile ice = UnitFile.of("ice-machine");
    ice.visit(500);
    assertEquals(2, curves("", "", unit(500), ice).size());
    assertEquals(
        List.of("ice-machine"),
        curves("ice-machine", "", unit(500), ice).stream().map(Curve::faultClass).toList());
  }

  @Test
  void theFaultThatOpensTheRecordIsLeftOut() {
    UnitFile file = UnitFile.of("walk-in-cooler");
    file.visit(500).fault("high-head-lockout");
    assertEquals(0, curves("", "", file).get(0).faults());
  }

  @Test
  void aUnitWithoutRecordIsNotWatched() {
    assertTrue(curves("", "", UnitFile.of("walk-in-cooler")).isEmpty());
  }
}
