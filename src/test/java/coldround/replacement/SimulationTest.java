package coldround.replacement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.replacement.budget.SolverProgram;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The play of chance against what is to be expected by the closed form. */
class SimulationTest {

  private static final Terms TEN = Sample.terms(10);
  private static final Terms NOMINAL =
      new Terms(Sample.TODAY, 2027, 10, TEN.discount(), 0.03, true);

  /** Old ones that may die before their turn; the first three of one site. */
  private static List<UnitOutlook> units() {
    List<UnitOutlook> units = new ArrayList<>();
    for (int u = 0; u < 5; u++) {
      units.add(
          Sample.of("walk-in-cooler", 2004 + 4 * u)
              .named("u" + u, u < 3 ? "S" : "T")
              .faults(5 - u, "compressor-no-start")
              .price(9000 + 500 * u)
              .outlook(TEN));
    }
    return units;
  }

  private static Policy.Outcome played(Terms terms, int runs, int... years) {
    PlanOrder order = Sample.order(terms, runs, 15000);
    return new Simulation(units(), order, Sample.ECONOMICS)
        .compare(List.of(new Policy("x", "x", years)))
        .get(0);
  }

  @Test
  void theMeanOfEachYearAndOfAllIsThatOfTheClosedForm() {
    for (Terms terms : List.of(TEN, NOMINAL)) {
      Policy.Outcome outcome = played(terms, 20_000, 4, 4, 4, 7, 10);
      Expected expected = outcome.expected();
      assertEquals(expected.today(), outcome.mean(), 4 * outcome.standardError());
      for (int year = 0; year < 10; year++) {
        double all = expected.capital()[year] + expected.running()[year];
        assertEquals(all, outcome.average()[year], 0.02 * all, "year " + year);
      }
    }
  }

  // three units of one site in one year: 600 once
  @Test
  void aShutdownIsSharedByThoseThatLive() {
    Expected together = played(TEN, 2, 0, 0, 0, 10, 10).expected();
    Expected apart = played(TEN, 2, 0, 0, 10, 0, 10).expected();
    double prices = 0;
    for (UnitOutlook unit : units().subList(0, 3)) {
      prices += unit.prices()[0];
    }
    assertEquals(prices + 600, together.planned()[0], 1e-6);
    assertEquals(0, together.unplanned(0), 1e-6);
    assertEquals(
        units().get(0).prices()[0] + units().get(1).prices()[0] + units().get(3).prices()[0] + 1200,
        apart.planned()[0],
        1e-6);
    // by hand: three that live with chances a, b, c need 1 - (1 - a)(1 - b)(1 - c) shutdowns
    Expected later = played(TEN, 2, 4, 4, 4, 10, 10).expected();
    double none = 1;
    double alive = 0;
    for (UnitOutlook unit : units().subList(0, 3)) {
      none *= 1 - unit.aliveAt(4);
      alive += unit.aliveAt(4);
    }
    Expected single = Expected.of(units().subList(0, 1), new int[] {4}, TEN);
    Expected second = Expected.of(units().subList(1, 2), new int[] {4}, TEN);
    Expected third = Expected.of(units().subList(2, 5), new int[] {4, 10, 10}, TEN);
    double three = single.capital()[4] + second.capital()[4] + third.capital()[4];
    assertEquals(three - 600 * (alive - (1 - none)), later.capital()[4], 1e-6);
  }

  @Test
  void thePlannedSpendingIsThatOfTheBudget() {
    ReplacementPlan plan =
        new Planner(new SolverProgram(), Sample.ECONOMICS)
            .plan(units(), Sample.order(NOMINAL, 2, 24000));
    assertTrue(Arrays.stream(plan.spend()).sum() > 0);
    assertArrayEquals(plan.spend(), plan.ours().expected().planned(), 1e-6);
  }
}
