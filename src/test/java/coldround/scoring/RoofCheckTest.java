package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import coldround.scoring.RoofCheck.Finding;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoofCheckTest {

  private static final RoofCheck CHECK = new RoofCheck(Rules.SCORING);

  private static Finding judge(double ambientF, double splitF, double expectedF) {
    return CHECK.judge((ambientF - 32) / 1.8, splitF / 1.8, expectedF / 1.8);
  }

  // both sides of each limit of limits.csv: 60 °F of air, 5 °F of split, 5, 10 and 20 °F of excess
  @ParameterizedTest
  @CsvSource({
    "80, 4.9, 30, IMPOSSIBLE",
    "80, -12, 30, IMPOSSIBLE",
    "59.9, 45, 30, TOO_COOL",
    "60, 45, 30, HIGH",
    "80, 24.9, 30, LOW",
    "80, 25, 30, AS_EXPECTED",
    "80, 35, 30, AS_EXPECTED",
    "80, 35.1, 30, WATCH",
    "80, 40, 30, WATCH",
    "80, 40.1, 30, HIGH",
    "80, 50, 30, HIGH",
    "80, 50.1, 30, FAR",
    "80, 35, 20, HIGH",
  })
  void aSplitIsJudgedByTheLimitsOfTheTables(
      double ambientF, double splitF, double expectedF, RoofVerdict verdict) {
    Finding finding = judge(ambientF, splitF, expectedF);
    assertEquals(verdict, finding.verdict(), finding.why().text(MeasureSystem.US));
    assertTrue(finding.why().source().toString().contains("limits.csv"));
    assertFalse(finding.next().isEmpty(), "something to check next");
  }

  @Test
  void theVerdictIsToldInTheUnitsAskedFor() {
    Finding finding = judge(80, 45, 30);
    String us = finding.why().text(MeasureSystem.US);
    assertTrue(us.contains("45.0 °F") && us.contains("15.0 °F over the 30.0 °F"), us);
    assertTrue(finding.why().text(MeasureSystem.SI).contains("25.0 K"));
  }

  @Test
  void aFlammableRefrigerantBringsItsOwnCaution() {
    List<String> none = CHECK.cautions(Rules.GASES.refrigerants().find("R-404A"));
    List<String> propane = CHECK.cautions(Rules.GASES.refrigerants().find("R-290"));
    assertTrue(propane.stream().anyMatch(text -> text.startsWith("Highly flammable")));
    assertFalse(none.stream().anyMatch(text -> text.contains("flammable refrigerant")));
  }
}
