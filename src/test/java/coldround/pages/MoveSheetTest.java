package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.quantity.MeasureSystem;
import coldround.rounds.Bill;
import coldround.rounds.ByHand.Move;
import coldround.rounds.ByHand.Outcome;
import coldround.rounds.Call;
import coldround.rounds.Job;
import coldround.rounds.Leg;
import coldround.rounds.Place;
import coldround.rounds.Premises;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundPlan.Round;
import coldround.rounds.RoundPlan.Stop;
import coldround.rounds.Span;
import coldround.rounds.Why;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoveSheetTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 4);
  private static final Instant EIGHT = Instant.parse("2026-05-04T08:00:00Z");
  private static final Place PLACE = new Place("LMC/S4", 40.0, -75.0);
  private static final Leg NO_WAY = new Leg(0, 0, false);
  private static final Bill FREE = new Bill(0, 0, 0, 0);

  private static Stop stop(String id) {
    Job job =
        new Job(
            "t", "LMC/S4", "u", "RTU-1", "survey", 30, Set.of(), DAY, DAY, DAY, null, 0, List.of());
    Call call = new Call(id, "LMC/S4", List.of(job), DAY, null, false, null);
    Premises site = new Premises("LMC/S4", "Elm Street", "", PLACE, ZoneOffset.UTC, "");
    Why why = new Why("w", true, null, "", "", "");
    return new Stop(call, site, NO_WAY, EIGHT, EIGHT, EIGHT, why);
  }

  /** "T1: a b" is the day of T1 with these stops. */
  private static List<Round> rounds(String told) {
    return Stream.of(told.split(","))
        .map(
            round -> {
              String[] parts = round.strip().split(":\\s*");
              List<Stop> stops = Stream.of(parts[1].split(" ")).map(MoveSheetTest::stop).toList();
              return new Round(
                  parts[0],
                  parts[0],
                  DAY,
                  ZoneOffset.UTC,
                  PLACE,
                  PLACE,
                  new Span(EIGHT, EIGHT.plusSeconds(3600)),
                  EIGHT,
                  EIGHT,
                  null,
                  stops,
                  NO_WAY,
                  0,
                  0,
                  0,
                  FREE);
            })
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "T1: a b, T2: c | T1: a b, T2: c | true",
        "T1: a b | T1: b a | false",
        "T1: a b, T2: c | T1: b, T2: c a | false",
        // its only stop goes to somebody who has none
        "T1: a | T2: a | false"
      })
  void aStopStandsThereAlreadyOnlyWhereNothingChanges(String before, String after, boolean same) {
    RoundPlan plan = new RoundPlan(DAY, DAY, rounds(after), List.of(), List.of(), FREE, "USD");
    Outcome outcome = new Outcome(plan, rounds(before), rounds(after), List.of(), FREE);
    Move move = new Move("a", "T2", DAY, 1);
    MoveSheet sheet = MoveSheet.of("p1", 1, move, outcome, MeasureSystem.US, false);
    assertEquals(same, sheet.nothing());
    assertEquals("Elm Street", sheet.site());
  }
}
