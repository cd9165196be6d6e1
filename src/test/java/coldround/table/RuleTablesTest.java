package coldround.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RuleTablesTest {

  @TempDir Path folder;

  private RuleTables tables(String text) throws Exception {
    Files.writeString(folder.resolve("limits.csv"), text);
    return new RuleTables("scoring", folder);
  }

  @Test
  void aGoodTableIsReadWithItsSource() throws Exception {
    RuleTables tables = tables("limit,value,source\r\nage,25,\"own, 2026\"\r\n");
    List<String> read =
        tables.read("limits.csv", "limit", row -> row.number("value") + " " + row.source());
    tables.check();
    assertEquals(List.of("25.0 limits.csv, row age: own, 2026"), read);
  }

  @Test
  void everyBadRowIsToldWithFileLineColumnAndReason() throws Exception {
    RuleTables tables =
        tables("limit,value,source\n" + "a,twelve,x\n" + "b,3\n" + "c,,x\n" + "c,4,x\n" + "d,4,\n");
    tables.read(
        "limits.csv",
        "limit",
        row -> {
          row.source();
          return row.number("value");
        });
    BadTables bad = assertThrows(BadTables.class, tables::check);
    assertEquals(5, bad.problems().size(), bad.getMessage());
    String file = folder.resolve("limits.csv").toString();
    String first = bad.problems().get(0).toString();
    assertEquals(file + ", line 2, column value: 'twelve' is not a number", first);
    assertEquals(3, bad.problems().get(1).line());
    assertEquals("'c' stands twice", bad.problems().get(3).message());
    assertEquals("source", bad.problems().get(4).column());
  }

  @Test
  void aMissingTableOrKeyColumnIsTold() throws Exception {
    RuleTables tables = tables("value\n1\n");
    tables.read("limits.csv", "limit", TableRow::source);
    tables.read("nowhere.csv", "limit", TableRow::source);
    BadTables bad = assertThrows(BadTables.class, tables::check);
    assertTrue(bad.getMessage().contains("column limit: the column is missing"));
    assertTrue(bad.getMessage().contains("scoring/nowhere.csv: cannot be read"));
  }

  @Test
  void aTableIsReadAsSpreadsheetProgramsSaveIt() throws Exception {
    byte[] saved =
        "limit;value;source\r\nage;25;\"own; r\u00e9vis\u00e9\"\r\n"
            .getBytes(java.nio.charset.Charset.forName("windows-1252"));
    Files.write(folder.resolve("limits.csv"), saved);
    RuleTables tables = new RuleTables("scoring", folder);
    List<String> read =
        tables.read("limits.csv", "limit", row -> row.number("value") + " " + row.text("source"));
    tables.check();
    assertEquals(List.of("25.0 own; r\u00e9vis\u00e9"), read);
  }
}
