package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldround.fleet.Unit;
import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tasks on the days of their bookings and moves. */
class ArrangingTest {

  private static final LocalDate TODAY = LocalDate.parse("2026-03-02");
  private static final Source SOURCE = new Source("test.csv", "row", "the test");

  private static TaskReason reason(String code, String date) {
    return new TaskReason(LocalDate.parse(date), new Reason(code, code, Map.of(), SOURCE));
  }

  private static Task task(TaskReason... reasons) {
    LocalDate due = reasons[0].date();
    return new Task(
        "t",
        new Unit("u", "C", "S", "u", "", "", "", "", "", null, "", "", null, Map.of()),
        "electrical-inspection",
        due,
        due.minusDays(10),
        due.plusDays(10),
        30,
        "",
        1,
        Task.State.PLANNED,
        List.of(reasons),
        List.of());
  }

  private static Task arranged(Task task, Arrangements arrangements) {
    return new Arranging(Rules.UPKEEP.tables(), arrangements, TODAY).arranged(task);
  }

  private static Arrangements booked(String start) {
    Booking booking = new Booking("t", OffsetDateTime.parse(start), "T1", "r");
    return new Arrangements(Map.of("t", booking), Map.of());
  }

  @ParameterizedTest(name = "booked for {0}")
  @CsvSource({
    "2026-03-20T09:00:00-05:00, 2026-03-20",
    "2026-04-20T23:30:00-05:00, 2026-04-20", // the day at the site, not that of UTC
    "2026-06-01T09:00:00-05:00, 2026-06-01"
  })
  void aBookedTaskKeepsItsDayWhateverTheRulesAskForSince(String start, String day) {
    Task task =
        arranged(
            task(reason("economic-date", "2026-04-01"), reason("usual-interval", "2026-09-01")),
            booked(start));
    assertEquals(LocalDate.parse(day), task.due());
    assertEquals("booked", task.governing().reason().code());
    assertEquals(3, task.reasons().size());
    assertEquals(
        "Booked for " + day + ": it keeps that day",
        task.governing().reason().text(MeasureSystem.US));
  }

  // rows of scoring/binding-reasons.csv
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "leak-inspection, law",
    "leak-rate-over, law",
    "box-over-food-limit, safety",
    "voltage-imbalance-stop, safety",
    "wiring-bad, safety",
    "contactor-bad, safety",
    "cut-out-too-high, safety"
  })
  void safetyAndLawGoBeforeABookingAndSaySo(String code, String what) {
    Task task =
        arranged(
            task(reason("economic-date", "2026-04-01"), reason(code, "2026-04-10")),
            booked("2026-04-20T09:00:00Z"));
    assertEquals(LocalDate.parse("2026-04-10"), task.due());
    assertEquals(code, task.governing().reason().code());
    assertEquals("booked-too-late", task.reasons().get(1).reason().code());
    assertEquals(
        "Booked for 2026-04-20, but "
            + what
            + " asks for it by 2026-04-10: the booking is too late",
        task.reasons().get(1).reason().text(MeasureSystem.US));
  }

  @Test
  void aBookingOnTheDayOfTheLawIsInTime() {
    Task task =
        arranged(task(reason("leak-inspection", "2026-04-20")), booked("2026-04-20T09:00:00Z"));
    assertEquals("booked", task.governing().reason().code());
  }

  private static Arrangements moved(String due, String day) {
    Move move =
        new Move("t", LocalDate.parse(due), LocalDate.parse(day), TODAY.plusWeeks(5), 500, 400);
    return new Arrangements(Map.of(), Map.of("t", move));
  }

  @ParameterizedTest(name = "moved to {0}")
  @CsvSource({"2026-03-27, 2026-03-27", "2026-03-20, 2026-04-01"})
  void aMoveHoldsWhileItLiesWithinTheWindow(String day, String due) {
    Task task = arranged(task(reason("usual-interval", "2026-04-01")), moved("2026-04-01", day));
    assertEquals(LocalDate.parse(due), task.due());
    assertEquals(LocalDate.parse("2026-04-11"), task.latest());
  }

  @Test
  void aReadingThatWantsItEvenEarlierGoesBeforeTheMove() {
    Task task =
        arranged(task(reason("trip-margin", "2026-03-25")), moved("2026-04-01", "2026-03-27"));
    assertEquals(LocalDate.parse("2026-03-25"), task.due());
    assertEquals("trip-margin", task.governing().reason().code());
  }

  @Test
  void nothingIsMovedLater() {
    assertThrows(IllegalArgumentException.class, () -> moved("2026-04-01", "2026-04-01"));
  }

  @Test
  void aFixedTaskStaysAndCounts() {
    var fixed = new Levelling.Slot("a", TODAY.plusDays(21), TODAY, 60, true);
    var free = new Levelling.Slot("b", TODAY.plusDays(21), TODAY.plusDays(14), 60, false);
    Levelling.Plan plan = Levelling.plan(List.of(fixed, free), TODAY, 100);
    assertEquals(List.of("b"), plan.moves().stream().map(Move::taskId).toList());
    assertEquals(0, plan.minutesOver());
  }
}
