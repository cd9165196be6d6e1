package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class UnitViewTest {

  private static final UnitView US = UnitView.of(Sample.report(), MeasureSystem.US);
  private static final UnitView SI = UnitView.of(Sample.report(), MeasureSystem.SI);

  @Test
  void theReasonWithTheEarliestDateGoverns() {
    List<TaskView.Why> whys = US.tasks().get(0).reasons();
    assertEquals(List.of(true, false), whys.stream().map(TaskView.Why::governs).toList());
    assertEquals("1 Jun 2026", US.tasks().get(0).governing().date());
    assertEquals("1 other reason", US.tasks().get(0).othersTold());
    assertEquals(List.of(whys.get(1)), US.tasks().get(0).others());
    assertEquals("9 days late", US.tasks().get(0).away());
  }

  // 12.5 deltaF / 1.8 = 6.9 K
  @Test
  void aReasonSpeaksTheReadersUnits() {
    assertEquals(
        "The split is 12.5 °F above the clean split of 28.5 °F, read on 20 May 2026.",
        US.factors().get(2).reasons().get(0).text());
    assertTrue(SI.factors().get(2).reasons().get(0).text().startsWith("The split is 6.9 K"));
  }

  @Test
  void whatIsMissingStandsApartFromWhatIsKnown() {
    assertEquals(4, US.figures().size());
    assertEquals(
        List.of(
            new Plate.Field(
                "Voltage imbalance", "The voltages between all three legs on one visit")),
        US.missing());
  }

  @Test
  void aReadingNotTakenSaysWhyAndOneNotBelievedToo() {
    List<VisitView.ReadingView> readings = US.visits().get(0).readings();
    assertEquals("318 psig", readings.get(0).value());
    assertEquals("Condenser fan, fan 2", readings.get(1).name());
    assertEquals("far over plate", readings.get(1).suspect());
    assertEquals("port blocked by shelving", readings.get(2).notTaken());
  }

  @Test
  void historyIsNewestFirst() {
    assertEquals(
        List.of("20 May 2026", "15 Sep 2025"), US.visits().stream().map(VisitView::date).toList());
    // the lockout noted on the visit of May, then the one of the fault list
    assertEquals(
        List.of("20 May 2026", "3 Jul 2025"), US.faults().stream().map(FaultView::date).toList());
  }

  @Test
  void thePlateShowsWhatWasNotGivenAsEmpty() {
    assertEquals("400 psig", value(US.plate().settings(), "High cut-out"));
    assertEquals("2758 kPag", value(SI.plate().settings(), "High cut-out"));
    assertEquals("", value(US.plate().settings(), "Low cut-out"));
    assertEquals("", value(US.plate().identity(), "Serial"));
  }

  private static String value(List<Plate.Field> fields, String name) {
    Stream<Plate.Field> named = fields.stream().filter(field -> field.name().equals(name));
    return named.findFirst().orElseThrow().value();
  }

  @Test
  void cautionsOfTheUnitAndItsTasksStandOnce() {
    assertEquals(3, US.cautions().size());
  }
}
