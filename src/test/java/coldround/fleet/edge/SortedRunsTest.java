package coldround.fleet.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What comes back is what the sorting of the library makes of all rows in memory. */
class SortedRunsTest {

  private static final Comparator<VisitRow> BY_KEY =
      Comparator.comparing((VisitRow row) -> row.unitId).thenComparing(row -> row.number);

  @Provide
  Arbitrary<List<List<VisitRow>>> runs() {
    Arbitrary<String> texts =
        Arbitraries.oneOf(
            Arbitraries.strings().ofMaxLength(20).filter(SortedRunsTest::isText),
            Arbitraries.of("", "\u0000", "é中😀", "x".repeat(60_000)));
    Arbitrary<VisitRow> rows =
        Combinators.combine(
                Arbitraries.longs().between(1, 9),
                texts,
                Arbitraries.integers().between(-800_000, 800_000),
                texts)
            .as(SortedRunsTest::row);
    return rows.list().ofMaxSize(40).list().ofMaxSize(8);
  }

  private static boolean isText(String text) {
    return text.codePoints().noneMatch(c -> c >= Character.MIN_SURROGATE && c <= 0xDFFF);
  }

  private static VisitRow row(long unit, String number, int day, String text) {
    VisitRow row = new VisitRow();
    row.unitId = unit;
    row.number = number;
    row.visited = LocalDate.ofEpochDay(day);
    row.technician = text;
    row.purpose = "purpose of " + number;
    row.readings = text + text;
    row.findings = "";
    row.work = "work";
    row.faults = text;
    row.note = "note " + day;
    return row;
  }

  private static List<Object> cells(VisitRow row) {
    return List.of(
        row.unitId,
        row.number,
        row.visited,
        row.technician,
        row.purpose,
        row.readings,
        row.findings,
        row.work,
        row.faults,
        row.note);
  }

  @Property(tries = 200)
  void allRunsComeBackInOneOrder(@ForAll("runs") List<List<VisitRow>> given) {
    List<VisitRow> all = new ArrayList<>();
    List<VisitRow> back = new ArrayList<>();
    try (SortedRuns runs = new SortedRuns(BY_KEY)) {
      for (List<VisitRow> each : given) {
        List<VisitRow> sorted = new ArrayList<>(each);
        sorted.sort(BY_KEY);
        runs.add(sorted);
        all.addAll(sorted);
      }
      for (Iterator<VisitRow> merged = runs.merged(); merged.hasNext(); ) {
        back.add(merged.next());
      }
    }
    all.sort(BY_KEY);
    // rows of one key may come in any order among themselves
    Comparator<List<Object>> anyOrder = Comparator.comparing(Object::toString);
    assertEquals(
        all.stream().map(SortedRunsTest::cells).sorted(anyOrder).toList(),
        back.stream().map(SortedRunsTest::cells).sorted(anyOrder).toList());
    for (int i = 0; i < all.size(); i++) {
      assertEquals(0, BY_KEY.compare(all.get(i), back.get(i)), "row " + i);
    }
  }
}
