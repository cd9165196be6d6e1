package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting;
import coldround.fleet.Kind;
import coldround.sheet.SheetReader;
import coldround.sheet.SheetWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ImportingTest {

  /** Knows the units named U; a visit is new once and unchanged after. */
  private static final class Store implements FleetWriting {
    final List<Integer> batches = new ArrayList<>();
    final List<Entry> entries = new ArrayList<>();
    private final Set<String> visits = new HashSet<>();

    @Override
    public Written write(Kind kind, List<Entry> batch, String origin) {
      batches.add(batch.size());
      entries.addAll(batch);
      return new Written(batch.stream().map(this::outcome).toList(), Set.of("u1"), List.of());
    }

    private Outcome outcome(Entry entry) {
      if (!entry.key("unit").equals("U")) {
        return Outcome.UNKNOWN_UNIT;
      }
      return visits.add(entry.key("visit")) ? Outcome.CREATED : Outcome.UNCHANGED;
    }
  }

  private final Store store = new Store();
  private final StringWriter rejected = new StringWriter();

  private Tally run(String text) {
    SheetReader rows = SheetReader.standard(new StringReader(text));
    List<Column> columns = Lists.TABLES.columns(Kind.VISITS);
    Heading heading =
        HeadingReader.read(Kind.VISITS, rows.next().cells(), 1, columns, Lists.rules());
    SheetWriter writer = SheetWriter.guarded(rejected);
    return new Importing(Kind.VISITS, heading, columns, Lists.rules(), store, Lists.run(), writer)
        .run(rows);
  }

  private static final String HEADER = "customer,site,unit,visit,date,note\r\n";

  @Test
  void rowsAreCountedByWhatBecameOfThem() {
    Tally tally =
        run(
            HEADER
                + "C,S,U,1,2026-05-01,a\r\n\r\n,,,,,\r\nC,S,U,1,2026-05-01,a\r\n"
                + "C,S,X,2,2026-05-01,a\r\nC,S,U,3,someday,a\r\n");
    assertEquals(Tally.Rows.of(1, 0, 1, 2), tally.rows());
    assertEquals(4, tally.rows().read());
    assertEquals(
        List.of("unknown-reference", "not-a-date"),
        tally.problems().stream().map(problem -> problem.code().text()).toList());
  }

  @Test
  void rejectedRowsAreKeptInTheirOrderWithWhatIsWrong() {
    run(HEADER + "C,S,U,1,someday,\"a,b\"\r\nC,S,X,2,2026-05-01,x\r\nC,S,U,3,never,\r\n");
    List<List<String>> rows = new ArrayList<>();
    SheetReader.standard(new StringReader(rejected.toString()))
        .forEachRemaining(row -> rows.add(row.cells()));
    assertEquals(
        List.of(
            "customer",
            "site",
            "unit",
            "visit",
            "date",
            "note",
            "problem_row",
            "problem_column",
            "problem"),
        rows.get(0));
    assertEquals(
        List.of("C", "S", "U", "1", "someday", "a,b", "2", "date"), rows.get(1).subList(0, 8));
    assertEquals(List.of("C", "S", "X", "2"), rows.get(2).subList(0, 4));
    assertTrue(rows.get(2).get(8).contains("Import units first"));
    assertEquals(4, rows.size());
  }

  @Test
  void theSameKeyWithOtherContentIsToldOnceForEachChange() {
    Tally tally =
        run(
            HEADER
                + "C,S,U,1,2026-05-01,a\r\nC,S,U,1,2026-05-01,a\r\n"
                + "C,S,U,1,2026-05-01,b\r\nC,S,U,2,2026-05-01,b\r\n");
    assertEquals(1, tally.problemCount());
    RowProblem twin = tally.problems().get(0);
    assertEquals(ProblemCode.DUPLICATE_IN_FILE, twin.code());
    assertEquals(4, twin.row());
    assertTrue(twin.message().startsWith("line 3 has the same customer, site, unit, visit"));
  }

  @Test
  void rowsGoToTheStoreInBatches() {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < 1001; i++) {
      text.append("C,S,U,").append(i).append(",2026-05-01,\r\n");
    }
    assertEquals(1001, run(text.toString()).rows().created());
    assertEquals(List.of(500, 500, 1), store.batches);
  }

  @Test
  void aFileOfNothingButBadRowsIsGivenUp() {
    String bad = "C,S,U,1,someday,\r\n";
    assertEquals(19_999, run(HEADER + bad.repeat(19_999)).rows().rejected());
    UnreadableFile refusal =
        assertThrows(UnreadableFile.class, () -> run(HEADER + bad.repeat(25_000)));
    assertEquals("nothing-usable", refusal.code());
    assertTrue(refusal.getMessage().contains("line 2, column date"), refusal.getMessage());
    String one = "C,S,U,1,2026-05-01,\r\n";
    assertEquals(25_000, run(HEADER + one + bad.repeat(25_000)).rows().rejected());
  }

  @Test
  void surplusCellsRejectTheRowAndMissingOnesAreToldAndEmpty() {
    Tally tally =
        run(HEADER + "C,S,U,1,2026-05-01,a,b\r\nC,S,U,2,2026-05-01\r\nC,S,U,3,2026-05-01,a,,\r\n");
    assertEquals(Tally.Rows.of(2, 0, 0, 1), tally.rows());
    assertEquals(
        List.of("too-many-cells", "too-few-cells"),
        tally.problems().stream().map(problem -> problem.code().text()).toList());
  }
}
