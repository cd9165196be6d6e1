package coldround.replacement;

import coldround.fleet.Fault;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.Assessment;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import coldround.upkeep.Upkeep;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A unit in words of the trade, judged under the packaged tables. */
final class Sample {

  static final LocalDate TODAY = LocalDate.of(2026, 7, 1);
  static final Economics ECONOMICS;
  static final Outlooks OUTLOOKS;
  private static final Scoring SCORING;

  static {
    RuleTables tables = new RuleTables("scoring", null);
    ScoringRules rules = ScoringRules.load(tables);
    RefrigerantRules gases = RefrigerantRules.load(tables);
    Upkeep upkeep =
        Upkeep.load(
            tables, rules, gases.refrigerants(), gases.leakInspections(), gases.categories());
    ECONOMICS = Economics.load(tables, rules, upkeep);
    SCORING = new Scoring(rules, gases);
    tables.check();
    OUTLOOKS = new Outlooks(ECONOMICS, gases);
  }

  String id = "u1";
  String site = "S";
  String kind = "walk-in-cooler";
  String refrigerant = "R-404A";
  LocalDate installed = LocalDate.of(2012, 7, 1);
  final Map<String, Quantity> plate = new HashMap<>(Map.of("charge", Quantity.of(12, "lb")));
  final List<Fault> faults = new ArrayList<>();

  static Sample of(String kind, int installedYear) {
    Sample sample = new Sample();
    sample.kind = kind;
    sample.installed = LocalDate.of(installedYear, 7, 1);
    return sample;
  }

  Sample price(double dollars) {
    plate.put("replacement_cost", Quantity.of(dollars, "USD"));
    return this;
  }

  Sample named(String itsId, String itsSite) {
    id = itsId;
    site = itsSite;
    return this;
  }

  Sample faults(int count, String mode) {
    for (int i = 0; i < count; i++) {
      LocalDate date = TODAY.minusDays(100 + 200L * i);
      faults.add(new Fault(date, mode, "", date.plusDays(1), null, null, ""));
    }
    return this;
  }

  Assessment assessed() {
    Site place = new Site("C", site, "", "", 40.0, -80.0, null, null, "US", "dusty", "", null);
    Unit unit =
        new Unit(
            id,
            "C",
            site,
            "T-" + id,
            kind,
            "",
            "",
            "",
            "",
            installed,
            refrigerant,
            "",
            null,
            plate);
    Visit visit =
        new Visit(
            "1",
            TODAY.minusYears(5),
            "T1",
            "planned",
            List.of(),
            Map.of(),
            List.of(),
            List.of(),
            "");
    return SCORING.assess(new UnitHistory(place, unit, List.of(visit), faults), TODAY);
  }

  UnitOutlook outlook(Terms terms) {
    return OUTLOOKS.of(assessed(), terms);
  }

  static Terms terms(int horizon) {
    return new Terms(TODAY, 2027, horizon, new Discount(0.07), 0.023, false);
  }

  static PlanOrder order(Terms terms, int runs, double... limits) {
    double[] all = Arrays.copyOf(limits, terms.horizon());
    Arrays.fill(
        all,
        Math.min(limits.length, all.length),
        all.length,
        limits.length == 0 ? Double.POSITIVE_INFINITY : limits[limits.length - 1]);
    return new PlanOrder(terms, all, 1, Map.of(), Map.of(), 1, runs, 10);
  }
}
