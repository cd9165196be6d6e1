package coldround.refrigerant;

import static coldround.refrigerant.Tables.REFRIGERANTS;
import static coldround.refrigerant.Tables.refrigerant;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class RefrigerantsTest {

  @ParameterizedTest
  @CsvSource({
    "R-404A, R-404A",
    "r404a, R-404A",
    "R 404A, R-404A",
    "' R-404 a ', R-404A",
    "404A, R-404A",
    "R404, R-404A",
    "HFC-134a, R-134a",
    "R134A, R-134a",
    "HCFC-22, R-22",
    "Refrigerant 22, R-22",
    "CFC-12, R-12",
    "HFO-1234yf, R-1234yf",
    "HCFO-1233zd(E), R-1233zd(E)",
    "R-1234ze, R-1234ze(E)",
    "HFO-1234ze(E), R-1234ze(E)",
    "HC-290, R-290",
    "ammonia, R-717",
    "NH3, R-717",
    "R717, R-717",
    "CO2, R-744",
    "Carbon Dioxide, R-744",
    "R-507, R-507A",
    "Freon-12, R-12",
    "MP39, R-401A"
  })
  void aRefrigerantIsFoundHoweverItIsWritten(String written, String designation) {
    assertEquals(designation, REFRIGERANTS.find(written).orElseThrow().designation());
    assertTrue(REFRIGERANTS.curve(written).isPresent());
  }

  @ParameterizedTest
  @CsvSource({"R-407", "R-999", "water", "''", "R-", "R-22/R-404A", "-"})
  void whatIsUnclearIsNotGuessed(String written) {
    assertTrue(REFRIGERANTS.find(written).isEmpty());
    assertTrue(REFRIGERANTS.curve(written).isEmpty());
  }

  @Test
  void nothingIsNoRefrigerant() {
    assertTrue(REFRIGERANTS.find(null).isEmpty());
  }

  // published AR4 values (ASHRAE Handbook 2017 ch. 29 table 4 where read, else as the trade quotes
  // them); AR5 from the same handbook table, which rounds to three digits
  @ParameterizedTest
  @CsvFileSource(resources = "/refrigerant/blend-gwp.csv", numLinesToSkip = 1)
  void gwpOfABlendFollowsFromItsComposition(String blend, double ar4, String source, Double ar5) {
    Refrigerant refrigerant = refrigerant(blend);
    assertEquals(ar4, refrigerant.gwpAr4(), Math.max(1, ar4 * 0.002), source);
    if (refrigerant.composition().keySet().stream().allMatch(part -> known(part))) {
      double ar4FromParts = 0;
      double ar5FromParts = 0;
      for (var part : refrigerant.composition().entrySet()) {
        ar4FromParts += part.getValue() / 100 * refrigerant(part.getKey()).gwpAr4();
        ar5FromParts += part.getValue() / 100 * refrigerant(part.getKey()).gwpAr5();
      }
      assertEquals(ar4, ar4FromParts, Math.max(1.1, ar4 * 0.002));
      if (ar5 != null) {
        assertEquals(ar5, ar5FromParts, Math.max(1, ar5 * 0.005));
      }
    }
  }

  private static boolean known(String part) {
    return REFRIGERANTS.find(part).isPresent();
  }

  // IPCC AR4 blend values as published
  @ParameterizedTest
  @CsvSource({
    "R-404A, 3922", "R-407A, 2107", "R-407C, 1774", "R-410A, 2088", "R-422D, 2729",
    "R-448A, 1387", "R-449A, 1397", "R-450A, 604", "R-452A, 2140", "R-454B, 466",
    "R-454C, 148", "R-507A, 3985", "R-513A, 631"
  })
  void theGwpShownIsThePublishedOne(String blend, double gwp) {
    assertEquals(gwp, refrigerant(blend).gwpAr4());
  }

  // ASHRAE 34 safety groups
  @ParameterizedTest
  @CsvSource({
    "R-404A, false, false",
    "R-290, true, false",
    "R-32, true, false",
    "R-717, true, true",
    "R-123, false, true",
    "R-744, false, false",
    "R-454C, true, false"
  })
  void dangerFollowsFromTheSafetyGroup(String designation, boolean flammable, boolean toxic) {
    assertEquals(flammable, refrigerant(designation).flammable());
    assertEquals(toxic, refrigerant(designation).toxic());
  }

  @Test
  void familiesAreTheLaws() {
    assertTrue(refrigerant("R-502").depletesOzone());
    assertTrue(refrigerant("R-408A").depletesOzone());
    assertFalse(refrigerant("R-404A").depletesOzone());
    assertTrue(refrigerant("R-448A").holdsHfc());
    assertFalse(refrigerant("R-1234yf").holdsHfc());
    assertTrue(refrigerant("R-401A").contains("R-22"));
  }

  @Test
  void badRowsAreToldWithFileLineAndReason(@TempDir Path folder) throws Exception {
    Files.writeString(
        folder.resolve("saturation.csv"),
        """
        point,refrigerant,temperature_c,bubble_kpa,dew_kpa
        R-12@0,R-12,0,308,309
        R-22@0,R-22,0,498,498
        R-22@5,R-22,5,497,497
        R-999@0,R-999,0,1,1
        R-999@1,R-999,1,2,2
        """);
    Files.writeString(
        folder.resolve("refrigerant-names.csv"), "name,designation,source\nsnow,R-000,own\n");
    RuleTables tables = new RuleTables("scoring", folder);
    Refrigerants.load(tables);
    String told = assertThrows(BadTables.class, tables::check).getMessage();
    assertTrue(told.contains("line 2: the dew pressure is above the bubble pressure"), told);
    assertTrue(told.contains("R-22 does not rise at 5.0 degC"), told);
    assertTrue(told.contains("R-999 is not in refrigerants.csv"), told);
    assertTrue(told.contains("R-134a has no curve"), told);
    assertTrue(told.contains("snow means a refrigerant that is not in the list"), told);
  }

  @Test
  void aCompositionMustAddUp(@TempDir Path folder) throws Exception {
    String packaged = Files.readString(Path.of("scoring/refrigerants.csv"));
    Files.writeString(
        folder.resolve("refrigerants.csv"),
        packaged.replace("R-32:50;R-125:50", "R-32:50;R-125:40"));
    RuleTables tables = new RuleTables("scoring", folder);
    Refrigerants.load(tables);
    String told = assertThrows(BadTables.class, tables::check).getMessage();
    assertTrue(told.contains("the composition adds up to 90.0 %, not 100"), told);
  }
}
