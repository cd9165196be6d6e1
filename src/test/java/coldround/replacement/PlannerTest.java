package coldround.replacement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.replacement.budget.SolverProgram;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlannerTest {

  private static final Terms TEN = Sample.terms(10);
  private final Planner planner = new Planner(new SolverProgram(), Sample.ECONOMICS);

  private static List<UnitOutlook> units() {
    List<UnitOutlook> units = new ArrayList<>();
    for (int u = 0; u < 6; u++) {
      units.add(
          Sample.of("walk-in-cooler", 2005 + 2 * u)
              .named("u" + u, "S" + u)
              .faults(6 - u, "compressor-no-start")
              .price(9000 + 500 * u)
              .outlook(TEN));
    }
    return units;
  }

  @Test
  void withoutLimitsEachUnitHasItsBestYear() {
    ReplacementPlan plan = planner.plan(units(), Sample.order(TEN, 50));
    for (UnitDecision decision : plan.decisions()) {
      assertEquals(decision.best().year(), decision.year(), decision.outlook().tag());
    }
    assertEquals(0, plan.costOfLimits(), 0.01);
    assertEquals(-1, plan.more().year());
  }

  @Test
  void aLimitCostsSomethingAndIsKept() {
    ReplacementPlan plan = planner.plan(units(), Sample.order(TEN, 50, 6000));
    double left = 0;
    for (double spend : plan.spend()) {
      assertTrue(spend <= 6000 + left + 0.01);
      left += 6000 - spend;
    }
    assertTrue(plan.costOfLimits() > 0);
    assertTrue(plan.solution().gap() <= Planner.GAP);
    assertTrue(plan.more().year() >= 0);
  }

  @Test
  void unitsOfOneSiteShareTheShutdown() {
    List<UnitOutlook> apart = units().subList(0, 2);
    List<UnitOutlook> together =
        List.of(
            Sample.of("walk-in-cooler", 2005)
                .named("u0", "S")
                .faults(6, "compressor-no-start")
                .price(9000)
                .outlook(TEN),
            Sample.of("walk-in-cooler", 2007)
                .named("u1", "S")
                .faults(5, "compressor-no-start")
                .price(9500)
                .outlook(TEN));
    PlanOrder atOnce =
        new PlanOrder(
            TEN, Sample.order(TEN, 2).limits(), 1, Map.of("u0", 0, "u1", 0), Map.of(), 1, 2, 10);
    double two = planner.plan(apart, atOnce).spend()[0];
    double one = planner.plan(together, atOnce).spend()[0];
    assertEquals(600, two - one, 1e-6);
  }

  @Test
  void lawAndLeaseAreKept() {
    PlanOrder order = Sample.order(TEN, 2, 30000);
    PlanOrder bound =
        new PlanOrder(TEN, order.limits(), 1, Map.of("u5", 2), Map.of("u0", 4, "u1", 10), 1, 2, 10);
    ReplacementPlan plan = planner.plan(units(), bound);
    assertTrue(plan.decisions().get(5).year() <= 2);
    assertTrue(plan.decisions().get(0).year() >= 4);
    assertEquals(10, plan.decisions().get(1).year());
  }

  @Test
  void demandsThatContradictAreNamed() {
    double[] limits = Sample.order(TEN, 2, 12000).limits();
    PlanOrder both = new PlanOrder(TEN, limits, 1, Map.of("u2", 3), Map.of("u2", 5), 1, 2, 10);
    Conflict conflict = assertThrows(Conflict.class, () -> planner.plan(units(), both));
    assertEquals("u2", conflict.parts().get(0).subject());
    PlanOrder tooMuch = new PlanOrder(TEN, limits, 1, Map.of("u0", 0, "u1", 0), Map.of(), 1, 2, 10);
    Conflict low = assertThrows(Conflict.class, () -> planner.plan(units(), tooMuch));
    assertEquals("2027", low.parts().get(0).subject());
    assertTrue(low.parts().get(0).message().contains("T-u0"), low.parts().get(0).message());
  }

  // by hand: u0 costs 9000 + 350 + 144 and u1 9500 + 350 + 144 in the first year, 0.5 % more in
  // each
  // year after it, and 600 for the shutdown of its own site; the limits of the years up to 2030
  // help
  // as far as they are carried over
  @ParameterizedTest
  @CsvSource({
    "0, 0, 2027, 2027, 20688",
    "1, 0, 2027, 2027, 20688",
    "0, 500, 2027, 2028, 19738",
    "1, 500, 2027, 2030, 18832"
  })
  void aLimitThatLacksBeforeTheYearThatAUnitIsDueNamesIt(
      double carryOver, double limit, String first, String last, long missing) {
    double[] limits = Sample.order(TEN, 2, limit).limits();
    PlanOrder order =
        new PlanOrder(
            TEN, limits, carryOver, Map.of("u0", 3, "u1", 3), Map.of(), 1, 2, 10, Moved.NOT);
    Conflict conflict = assertThrows(Conflict.class, () -> planner.plan(units(), order));
    List<Conflict.Part> parts = conflict.parts();
    assertEquals(first, parts.get(0).subject(), () -> "" + parts);
    assertEquals(last, parts.get(parts.size() - 1).subject());
    String all = parts.stream().map(Conflict.Part::message).collect(Collectors.joining("\n"));
    for (String words : List.of("T-u0 (", "T-u1 (", "must be replaced by 2030")) {
      assertTrue(all.contains(words), all);
    }
    long raised =
        Pattern.compile("raised by (\\d+)")
            .matcher(all)
            .results()
            .mapToLong(found -> Long.parseLong(found.group(1)))
            .sum();
    assertEquals(missing, raised, parts.size(), all);
  }

  @Test
  void theSameSeedGivesTheSameFigures() {
    PlanOrder order = Sample.order(TEN, 200, 15000);
    Policy.Outcome first = planner.plan(units(), order).comparison().get(2);
    Policy.Outcome again = planner.plan(units(), order).comparison().get(2);
    assertEquals(first.mean(), again.mean());
    assertArrayEquals(first.high(), again.high());
  }

  @Test
  void thisPlanIsNoDearerThanTheOthersWithoutLimits() {
    ReplacementPlan plan = planner.plan(units(), Sample.order(TEN, 2));
    double ours = plan.comparison().get(2).expected().today();
    plan.comparison().forEach(other -> assertTrue(ours <= other.expected().today() + 0.01));
  }
}
