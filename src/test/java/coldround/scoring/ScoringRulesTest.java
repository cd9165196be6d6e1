package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.refrigerant.RefrigerantRules;
import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScoringRulesTest {

  @TempDir Path folder;

  private String problems() {
    RuleTables tables = new RuleTables("scoring", folder);
    ScoringRules.load(tables);
    LeakMethods.load(tables);
    return assertThrows(BadTables.class, tables::check).getMessage();
  }

  /** Puts the packaged table with one text replaced into the operator's folder. */
  private void change(String file, String from, String to) throws IOException {
    String text =
        new String(
            getClass().getResourceAsStream("/scoring/" + file).readAllBytes(),
            StandardCharsets.UTF_8);
    assertTrue(text.contains(from), from);
    Files.writeString(folder.resolve(file), text.replace(from, to));
  }

  @ParameterizedTest
  @CsvSource({
    "weights.csv, 'age,25', 'age,26', the weights add up to 101.0",
    "weights.csv, 'age,25', 'youth,25', is not one of",
    "limits.csv, 'ambient-least,60', 'ambient-most,60', nothing reads a limit 'ambient-most'",
    "limits.csv, 'ambient-least,60', 'ambient-most,60', the row 'ambient-least' is missing",
    "limits.csv, '60,degF', '60,deltaF', is a TEMPERATURE and not in deltaF",
    "limits.csv, 'fan-load-least,75', 'fan-load-least,175', fan-load-most must be above",
    "limits.csv, 'reading-sd,2', 'reading-sd,-2', must not be below 0",
    "kinds.csv, 'walk-in cooler,,walk-in-ref', 'walk-in cooler,,ref', names a row that service-life.csv does not have",
    "kinds.csv, 'unit,yes,', 'unit,,', 'one kind, not 0, must stand for unknown'",
    "service-life.csv, 'chiller,yes,', 'chiller,,', class chiller needs one row to use",
    "coil-grades.csv, 'clean,0', 'spotless,0', the row 'clean' is missing",
    "coil-grades.csv, 'heavy,0.75', 'heavy,7.5', outside 0.0 to 1.0",
    "fouling-priors.csv, 'unknown,', 'unheard,', the row 'unknown' is missing",
    "failure-modes.csv, 'leak,0.10', 'leak,0.20', the shares add up to",
    "fault-priors.csv, 'chiller,1.2', 'chiller,0', is outside 0.01",
    "design-ambients.csv, 'indoors,indoors', 'inside,indoors', names a row that design-ambients.csv does not have",
    "cautions.csv, 'roof,roof', 'roof,moon', is not one of",
    "roof-checks.csv, 'reading-gas,impossible', 'reading-gas,odd', is not one of",
    "roof-checks.csv, 'cool-control,too-cool', 'cool-control,low', no row says what to check when 'too-cool'",
    "part-grades.csv, 'worn,yes', 'worn,maybe', is not one of",
    "leak-methods.csv, '*,rolling-average', '*,guessing', is not one of",
    "leak-methods.csv, '*,rolling', 'C1/S1,rolling', the row '*' for all others is missing",
    "visit-purposes.csv, 'as-found', 'as-seen', is not one of",
  })
  void aBadTableStopsTheStartAndSaysWhy(String file, String from, String to, String message)
      throws IOException {
    change(file, from, to);
    String told = problems();
    assertTrue(told.contains(message), told);
    assertTrue(told.contains(file), told);
  }

  @Test
  void everyPackagedRowHasItsSource() {
    // a row without one is refused when read: reading them all is the check
    RuleTables tables = new RuleTables("scoring", null);
    ScoringRules.load(tables);
    RefrigerantRules.load(tables);
    tables.check();
  }

  @Test
  void everyKindOfTheContractHasARule() {
    List<String> kinds =
        List.of(
            "walk-in-cooler",
            "walk-in-freezer",
            "reach-in-cooler",
            "reach-in-freezer",
            "display-case",
            "prep-table",
            "ice-machine",
            "condensing-unit",
            "packaged-air-conditioner",
            "split-air-conditioner",
            "heat-pump",
            "chiller");
    assertEquals(kinds, Rules.SCORING.kinds().all().stream().map(KindRule::kind).toList());
  }
}
