package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.intake.RowReading.Understood;
import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The folder import/ agrees with itself and with the contract's list of columns. */
class ImportFolderTest {

  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(Kind.class)
  void theTemplateHasTheColumnsOfTheTable(Kind kind) throws Exception {
    String template = Files.readString(Path.of("import/templates/" + kind.code() + ".csv"));
    assertEquals(Lists.TABLES.columns().template(kind), template);
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void theExamplesMakeARow(Kind kind) {
    List<Column> columns =
        Lists.TABLES.columns(kind).stream().filter(c -> !c.name().equals("not_taken")).toList();
    Understood row =
        Lists.row(
            kind,
            Profile.STANDARD,
            columns.stream().map(Column::header).toList(),
            columns.stream().map(Column::example).toList());
    assertEquals(List.of(), row.problems());
    assertTrue(row.entry() != null);
  }

  @Test
  void theExamplesOfAVisitMakeAVisitWithEveryReading() {
    List<Column> columns = Lists.TABLES.columns(Kind.VISITS);
    Understood row =
        Lists.row(
            Kind.VISITS,
            Profile.STANDARD,
            columns.stream().map(Column::header).toList(),
            columns.stream().map(Column::example).toList());
    var visit = Merging.visit(null, row.entry());
    assertEquals(Lists.TABLES.columns().readings().size(), visit.readings().size());
    assertEquals(6, visit.findings().size());
  }

  // the required columns of the contract
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "customers    | customer",
        "sites        | customer,site",
        "units        | customer,site,unit,kind",
        "visits       | customer,site,unit,visit,date",
        "readings     | customer,site,unit,visit,quantity",
        "faults       | customer,site,unit,date,failure_mode",
        "technicians  | technician",
        "travel-times | from,to,minutes"
      })
  void theRequiredColumnsAreThoseOfTheContract(String kind, String required) {
    List<String> names =
        Lists.TABLES.columns(Kind.find(kind).orElseThrow()).stream()
            .filter(Column::mustBeFilled)
            .map(Column::name)
            .filter(name -> !kind.equals("travel-times") || !name.equals("distance"))
            .toList();
    assertEquals(required, String.join(",", names));
  }

  @Test
  void aBadRowOfAnOwnTableIsToldWithFileLineAndReason() throws Exception {
    String good = Files.readString(Path.of("import/columns.csv"));
    Files.writeString(
        folder.resolve("columns.csv"),
        good.replaceFirst("latitude,optional,number,,,-90", "latitude,optional,number,,,south")
            .replaceFirst(
                "surroundings,optional,choice,,surroundings", "surroundings,optional,choice,,air")
            .replaceFirst("charge,optional,measured,lb", "charge,optional,measured,"));
    RuleTables tables = new RuleTables("import", folder);
    IntakeTables.read(tables, List.of(Profile.STANDARD), Lists.rules().refrigerants());
    String message = assertThrows(BadTables.class, tables::check).getMessage();
    assertTrue(
        message.contains("columns.csv, line 10: the limit 'south' is not a number"), message);
    assertTrue(message.contains("codes.csv has no list 'air'"), message);
    assertTrue(message.contains("a column of type measured has a measure"), message);
  }

  @Test
  void anOwnCodeIsARowAndNoCode() throws Exception {
    String codes = Files.readString(Path.of("import/codes.csv"));
    Files.writeString(folder.resolve("codes.csv"), codes + "kind,wine-cabinet,cabinet for wine\n");
    RuleTables tables = new RuleTables("import", folder);
    Codes read = Codes.read(tables);
    tables.check();
    assertEquals("wine-cabinet", read.find("kind", "Wine Cabinet").orElseThrow());
  }
}
