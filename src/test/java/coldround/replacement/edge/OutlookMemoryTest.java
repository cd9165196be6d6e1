package coldround.replacement.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Fault;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.quantity.Quantity;
import coldround.replacement.Discount;
import coldround.replacement.Terms;
import coldround.scoring.FaultPriors;
import coldround.scoring.Limits;
import coldround.scoring.statistics.FaultTally;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is remembered is given again for the very same only. */
class OutlookMemoryTest {

  private static final RuleTables TABLES = new RuleTables("scoring", null);
  private static final FaultPriors PRIORS = FaultPriors.load(TABLES);

  private final OutlookMemory memory = new OutlookMemory();
  private int made;

  private static UnitHistory history(double price, Fault... faults) {
    Site site = new Site("C", "S", "", "", 40.0, -80.0, null, null, "US", "dusty", "", null);
    Unit unit =
        new Unit(
            "u1",
            "C",
            "S",
            "T",
            "walk-in-cooler",
            "",
            "",
            "",
            "",
            LocalDate.of(2012, 7, 1),
            "R-404A",
            "",
            null,
            Map.of("replacement_cost", Quantity.of(price, "USD")));
    return new UnitHistory(site, unit, List.of(), List.of(faults));
  }

  private static Terms terms(int day, int firstYear, int horizon, double rate) {
    LocalDate asOf = LocalDate.of(2026, 7, day);
    return new Terms(asOf, firstYear, horizon, new Discount(rate), 0.02, false);
  }

  private int asked(UnitHistory history, Terms terms, FaultPriors priors) {
    memory.of(
        history,
        terms,
        priors,
        () -> {
          made++;
          return null;
        });
    return made;
  }

  @Test
  void anythingThatDiffersIsWorkedOutAnew() {
    Terms usual = terms(1, 2027, 10, 0.07);
    assertEquals(1, asked(history(9000), usual, PRIORS));
    assertEquals(1, asked(history(9000), usual, PRIORS));
    assertEquals(1, asked(history(9000), terms(1, 2027, 10, 0.03), PRIORS), "the rate is no part");
    assertEquals(2, asked(history(9001), usual, PRIORS));
    Fault fault = new Fault(LocalDate.of(2026, 5, 1), "other", "", null, null, null, "");
    assertEquals(3, asked(history(9001, fault), usual, PRIORS));
    assertEquals(4, asked(history(9001, fault), terms(2, 2027, 10, 0.07), PRIORS));
    assertEquals(5, asked(history(9001, fault), terms(2, 2028, 10, 0.07), PRIORS));
    assertEquals(6, asked(history(9001, fault), terms(2, 2028, 11, 0.07), PRIORS));
    FaultPriors same = FaultPriors.load(new RuleTables("scoring", null));
    assertEquals(6, asked(history(9001, fault), terms(2, 2028, 11, 0.07), same), "equal ones");
    FaultTally fleet = FaultTally.of(1, 3652).times(90).plus(FaultTally.of(9, 3652).times(90));
    FaultPriors others =
        PRIORS.estimated(Map.of("remote-refrigeration", fleet), Limits.load(TABLES));
    assertEquals(7, asked(history(9001, fault), terms(2, 2028, 11, 0.07), others));
    assertEquals(7, asked(history(9001, fault), terms(2, 2028, 11, 0.07), others));
  }
}
