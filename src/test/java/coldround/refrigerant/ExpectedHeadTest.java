package coldround.refrigerant;

import static coldround.refrigerant.Tables.curve;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Atmosphere;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import org.junit.jupiter.api.Test;

class ExpectedHeadTest {

  private static double celsius(double degF) {
    return Quantity.of(degF, "degF").base();
  }

  private static double kelvin(double deltaF) {
    return Quantity.of(deltaF, "deltaF").base();
  }

  // common practice, no source: ambient + 30 F; the pressure is the handbook's for 100 F
  @Test
  void r12AtSeventyAmbientReadsAbout117() {
    ExpectedHead expected = ExpectedHead.of(curve("R-12"), celsius(70), kelvin(30));
    assertEquals(celsius(100), expected.condensingC(), 1e-9);
    double psig = (expected.pressureKpa() - Atmosphere.SEA_LEVEL_KPA) / 6.894757;
    assertEquals(117, psig, 0.5);
    String told = expected.reason().text(MeasureSystem.US);
    assertTrue(told.contains("30.0 °F above 70.0 °F ambient is at 100.0 °F"), told);
    assertTrue(told.contains("midpoint"), told);
  }

  // common practice, no source: 155 psig at 70 F is far too high, 108 psig at 67 F is healthy
  @Test
  void aMeasuredHeadTellsTheSplit() {
    double high = Quantity.of(155, "psig").pressureKpa(Atmosphere.SEA_LEVEL_KPA);
    assertTrue(ExpectedHead.splitK(curve("R-12"), high, celsius(70)) > kelvin(45));
    double healthy = Quantity.of(108, "psig").pressureKpa(Atmosphere.SEA_LEVEL_KPA);
    assertEquals(kelvin(28), ExpectedHead.splitK(curve("R-12"), healthy, celsius(67)), kelvin(1));
  }

  @Test
  void splitAndHeadAreTwoWaysOfOneSentence() {
    ExpectedHead expected = ExpectedHead.of(curve("R-455A"), 30, 14);
    assertEquals(14, ExpectedHead.splitK(curve("R-455A"), expected.pressureKpa(), 30), 1e-9);
  }

  @Test
  void carbonDioxideOnAHotDayHasNoExpectedHead() {
    assertThrows(OutsideTable.class, () -> ExpectedHead.of(curve("R-744"), 28, 8));
  }
}
