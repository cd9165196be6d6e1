package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.WeightTrial.Line;
import coldround.scoring.WeightTrial.Move;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class WeightTrialTest {

  private static Line line(String id, double before, double after) {
    return new Line(id, "C", "S", id, before, after);
  }

  @Test
  void whoMovesFarthestComesFirstAndWhoStaysIsLeftOut() {
    List<Move> moves =
        WeightTrial.moves(
            List.of(
                line("u1", 10, 90), line("u2", 20, 20), line("u3", 30, 30), line("u4", 95, 95)));
    assertEquals(
        List.of("u1 1>3", "u2 2>1", "u3 3>2"),
        moves.stream()
            .map(m -> m.line().unitId() + " " + m.rankBefore() + ">" + m.rankAfter())
            .toList());
  }

  @Test
  void equalScoresStandInTheOrderOfTheFleetList() {
    List<Move> moves =
        WeightTrial.moves(List.of(line("u10", 50, 40), line("u9", 50, 40), line("ua", 50, 40)));
    assertEquals(List.of("u9", "ua", "u10"), moves.stream().map(m -> m.line().unitId()).toList());
    assertTrue(moves.stream().allMatch(m -> m.rankBefore() == m.rankAfter()));
  }

  @Test
  void theScoresUnderOtherWeightsAreThoseThatTheTableWouldGive() {
    UnitFile file = UnitFile.of("walk-in-cooler");
    file.visit(30).split(90, 45).fault("other");
    file.visit(400).fault("other");
    Weights ageOnly =
        Weights.of(Map.of("age", 100.0, "refrigerant", 0.0, "coil", 0.0, "repeat-faults", 0.0));
    Assessment usual = Rules.SCORER.assess(file.history(), UnitFile.TODAY);
    Assessment tried = Rules.SCORER.with(ageOnly).assess(file.history(), UnitFile.TODAY);
    assertEquals(100 - 100 * usual.age().lostShare(), tried.condition().score(), 0.051);
  }
}
