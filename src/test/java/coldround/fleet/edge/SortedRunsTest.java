package coldround.fleet.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
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

  /** Held in small runs, emptied in the middle, held again. */
  @Property(tries = 100)
  void whatIsHeldComesOutOnceAndInOrder(@ForAll("runs") List<List<VisitRow>> given) {
    List<VisitRow> back = new ArrayList<>();
    try (HeldVisits held = new HeldVisits(2_000, 100_000)) {
      for (List<VisitRow> each : given) {
        held.add(each);
        if (held.isFull()) {
          drain(held, back);
        }
      }
      drain(held, back);
      assertEquals(0, held.count());
    }
    Comparator<List<Object>> anyOrder = Comparator.comparing(Object::toString);
    assertEquals(
        given.stream().flatMap(List::stream).map(SortedRunsTest::cells).sorted(anyOrder).toList(),
        back.stream().map(SortedRunsTest::cells).sorted(anyOrder).toList());
  }

  private static void drain(HeldVisits held, List<VisitRow> into) {
    List<VisitRow> some = new ArrayList<>();
    held.inOrder().forEachRemaining(some::add);
    assertEquals(held.count(), some.size());
    for (int i = 1; i < some.size(); i++) {
      assertTrue(BY_KEY.compare(some.get(i - 1), some.get(i)) <= 0, "row " + i);
    }
    held.empty();
    into.addAll(some);
  }

  @Example
  void nothingIsHeldBehindTheEndOfTheTransaction() {
    HeldVisits held = new HeldVisits();
    held.close();
    assertThrows(IllegalStateException.class, () -> held.add(List.of(row(1, "A", 0, ""))));
    assertEquals(0, held.count());
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
