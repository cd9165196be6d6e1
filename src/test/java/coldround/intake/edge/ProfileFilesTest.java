package coldround.intake.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Kind;
import coldround.intake.DateOrder;
import coldround.intake.Profile;
import coldround.quantity.Measure;
import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProfileFilesTest {

  @TempDir Path folder;
  private RuleTables tables;

  @BeforeEach
  void tables() throws Exception {
    Files.createDirectory(folder.resolve("profiles"));
    tables = new RuleTables("import", folder);
  }

  private void write(String name, String yaml) throws Exception {
    Files.writeString(folder.resolve("profiles").resolve(name + ".yaml"), yaml);
  }

  @Test
  void thePackagedStandardIsThereWithoutAFolder() {
    List<Profile> profiles = ProfileFiles.read(tables, null);
    tables.check();
    Profile standard = profiles.stream().filter(p -> p.name().equals("standard")).findFirst().get();
    assertEquals(DateOrder.FROM_COLUMN, standard.dates());
    assertEquals(Measure.DEG_F, standard.measureNames().get("°F"));
  }

  @Test
  void anotherProfileIsOneMoreFile() throws Exception {
    write(
        "own",
        """
            name: own
            dates: day-month-year
            decimal: comma
            columns:
              visits:
                head_pressure: {aliases: [HP], patterns: ["high.*"], measure: barg}
            values:
              coil_grade: {Dirty: heavy}
            """);
    List<Profile> profiles = ProfileFiles.read(tables, folder);
    tables.check();
    Profile own = profiles.stream().filter(p -> p.name().equals("own")).findFirst().get();
    assertEquals(',', own.decimalSign());
    assertEquals("heavy", own.values().get("coil_grade").get("dirty"));
    Profile.Alias alias = own.columns().get(Kind.VISITS).get(0);
    assertEquals("head_pressure", alias.column());
    assertEquals(Measure.BARG, alias.measure());
  }

  @Test
  void whatIsWrongWithAProfileIsToldWithItsFile() throws Exception {
    write("typo", "name: typo\ndate: day-month-year\n");
    write("order", "name: order\ndates: year-day-month\n");
    write("other", "name: another\n");
    write("sign", "name: sign\ndecimal: dot\n");
    write("broken", "name: [\n");
    write("unit", "name: unit\nmeasure_names: {F: farenheit}\n");
    write("kind", "name: kind\ncolumns: {boats: {}}\n");
    write("regex", "name: regex\ncolumns: {visits: {note: {patterns: ['(']}}}\n");
    write("empty", "");
    write("cut", "name: \"cut\n");
    ProfileFiles.read(tables, folder);
    String message = assertThrows(BadTables.class, tables::check).getMessage();
    for (String part :
        List.of(
            "typo.yaml: there is no entry 'date'",
            "there is no order year-day-month",
            "the file of profile another is other.yaml",
            "decimal is point or comma, not dot",
            "broken.yaml: what stands at [name]",
            "cut.yaml, line 1",
            "'farenheit' is no unit of measure",
            "no kind boats",
            "regex.yaml",
            "empty.yaml")) {
      assertTrue(message.contains(part), part + " in " + message);
    }
  }
}
