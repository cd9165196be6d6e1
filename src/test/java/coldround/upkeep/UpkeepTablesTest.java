package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.table.BadTables;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UpkeepTablesTest {

  @TempDir Path folder;

  private String packaged(String file) throws IOException {
    try (InputStream in = getClass().getClassLoader().getResourceAsStream("scoring/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private BadTables refused(String file, String text) throws IOException {
    Files.writeString(folder.resolve(file), text);
    return assertThrows(BadTables.class, () -> Rules.load(folder));
  }

  @ParameterizedTest(name = "{0}: {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "intervals.csv | dusty;greasy,90,30,365,180 | dusty;greasy,90,120,365,180 | must rise",
        "intervals.csv | dusty;greasy,90,30,365,180 | dusty;greasy,90,30,365,400 | longest_harsh 400",
        "intervals.csv | drain,drain-clearing | drain,door-inspection | another row has an interval",
        "intervals.csv | drain,drain-clearing | drain,drain-blowing | is no task",
        "intervals.csv | door-inspection,* | door-inspection,wardrobe | is no kind of unit",
        "upkeep-limits.csv | fan-replace-below,65 | fan-replace-below,130 | fan-replace-above must be above",
        "upkeep-limits.csv | fan-look-after,30,d | fan-look-after,30,% | is a TIME",
        "upkeep-limits.csv | survey-gap,365 | survey-hole,365 | nothing reads a limit",
        "cut-out-limits.csv | *,125,157 | *,160,157 | must be below most",
        "box-limits.csv | prep-table,41,degF | prep-table,41,psig | must be a temperature",
        "task-triggers.csv | contactor,bad | contactor, | a finding needs a grade",
        "task-effects.csv | drain-blocked,,0.8 | drain-blocked,,1.8 | is outside 0.0 to 1.0",
        "tasks.csv | condenser coil cleaning,40 | condenser coil cleaning,0 | minutes must be above 0",
        "tasks.csv | survey,survey,30,refrigerant | survey,survey,30,magic | is no competence",
        "energy-use.csv | walk-in-cooler,medium,14 | walk-in-cooler,medium,25 | is outside 0.1 to 24.0",
        "cycle-power-like.csv | R-12,R-134a | R-12,R-11 | has no medium rows",
        "costs.csv | labour,labour,*,*,135 | labour,labour,*,*,35 | does not lie between",
        "costs.csv | 135,95,185,USD | 135,95,185,EUR | must all be in one currency",
        "costs.csv | trip,trip,*,* | journey,journey,*,* | no row of group trip",
        "survey-needs.csv | place,\" | location,\" | is not one of"
      })
  void aTableThatContradictsItselfIsRefusedWithFileAndReason(
      String file, String right, String wrong, String reason) throws IOException {
    String text = packaged(file);
    String from = right.strip();
    if (file.strip().equals("survey-needs.csv")) {
      from = "place,\"";
    }
    assertTrue(text.contains(from), () -> file + " no longer has " + right);
    BadTables bad = refused(file.strip(), text.replace(from, wrong.strip()));
    assertTrue(bad.getMessage().contains(reason.strip()), bad.getMessage());
    assertTrue(bad.getMessage().contains(file.strip()), bad.getMessage());
  }

  @Test
  void aRowWithoutASourceIsRefused() throws IOException {
    String text = packaged("cut-out-limits.csv").replaceAll("\"ammonia.*\"|\"common[^\"]*\"", "");
    assertTrue(refused("cut-out-limits.csv", text).getMessage().contains("source"));
  }

  @Test
  void aChangedRowChangesTheDateThatItIsTheSourceOf() throws IOException {
    String text =
        packaged("intervals.csv")
            .replace(
                "drain,drain-clearing,*,dusty;greasy,180,90,365,180",
                "drain,drain-clearing,*,dusty;greasy,100,90,365,180");
    Files.writeString(folder.resolve("intervals.csv"), text);
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-03-01", "drain-cleared");
    Task task =
        Rules.load(folder).tasks(unit.assessment(), unit.today).stream()
            .filter(found -> found.task().equals("drain-clearing"))
            .findFirst()
            .orElseThrow();
    assertEquals("2026-06-09", task.due().toString());
    assertTrue(
        task.governing().reason().source().toString().startsWith("intervals.csv, row drain"));
  }
}
