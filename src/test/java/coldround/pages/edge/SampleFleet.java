package coldround.pages.edge;

import coldround.fleet.Entry;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.FleetWriting;
import coldround.fleet.Kind;
import coldround.fleet.UnitIds;
import coldround.pages.Sample;
import coldround.scoring.Condition;
import coldround.scoring.FactorScore;
import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.Ranking;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts units into the store and the list. */
@ApplicationScoped
public class SampleFleet {

  static final String LONG_NAME = "Saint Aldhelm Regional Hospital of the Upper River Counties";
  static final String CUSTOMER = "LONG";
  private static final String[] KINDS = {"walk-in-cooler", "ice-machine", "chiller"};
  private static final String[] GASES = {"R-404A", "R-22", "R-448A", ""};

  @Inject FleetWriting writing;
  @Inject Ranking ranking;
  @Inject FleetList list;
  @Inject Fleet stored;

  /** So many units of one customer with a name of 60 characters, the first unit the worst. */
  @Transactional
  public void put(int units) {
    rank(write(units));
  }

  /** Takes all units out of the list. */
  @Transactional
  public void clear() {
    ranking.remove(all().stream().map(FleetLine::unitId).toList());
  }

  private List<String> write(int units) {
    writing.write(Kind.CUSTOMERS, List.of(entry("customer", CUSTOMER, "name", LONG_NAME)), "i1");
    writing.write(
        Kind.SITES,
        List.of(entry("customer", CUSTOMER, "site", "MAIN", "name", "Main building <kitchen>")),
        "i1");
    List<Entry> entries = new ArrayList<>();
    for (int n = 0; n < units; n++) {
      entries.add(unit(n));
    }
    writing.write(Kind.UNITS, entries, "i1");
    List<String> ids = new ArrayList<>();
    stored.eachHistory(
        new FleetFilter(CUSTOMER, "", "", "", ""), history -> ids.add(history.unit().id()));
    return ids.stream()
        .sorted(Comparator.comparing(id -> UnitIds.number(id).orElseThrow()))
        .toList();
  }

  private static Entry unit(int n) {
    return entry(
        "customer",
        CUSTOMER,
        "site",
        "MAIN",
        "unit",
        tag(n),
        "kind",
        KINDS[n % 3],
        "maker",
        "Thornfield",
        "model",
        "WC " + n,
        "installed",
        LocalDate.of(2004 + n % 20, 4, 2),
        "refrigerant",
        GASES[n % 4]);
  }

  static String tag(int n) {
    return String.format("U-%03d", n);
  }

  private void rank(List<String> unitIds) {
    List<Ranking.Place> places = new ArrayList<>();
    for (int n = 0; n < unitIds.size(); n++) {
      LocalDate due = n % 5 == 4 ? null : Sample.DAY.plusDays(n * 9L - 20);
      String task = due == null ? "" : "condenser-coil-cleaning";
      places.add(new Ranking.Place(unitIds.get(n), condition(n), due, task));
    }
    ranking.put(places);
  }

  private static Condition condition(int n) {
    double share = Math.max(0.02, 0.9 - n * 0.013);
    return Condition.of(
        Sample.DAY,
        n % 4 == 1 ? 0.6 : 1,
        List.of(
            factor("age", 25, share, true),
            factor("refrigerant", 20, share * 0.8, true),
            factor("coil", 25, share * 0.9, n % 4 != 1),
            factor("repeat-faults", 30, share * 0.7, true)),
        List.of(),
        List.of());
  }

  private static FactorScore factor(String name, double weight, double share, boolean known) {
    double open = known ? 0 : 0.1;
    return FactorScore.of(
        name,
        weight,
        share,
        Math.max(0, share - open),
        Math.min(1, share + open),
        known,
        List.of());
  }

  private static Entry entry(Object... pairs) {
    Map<String, Object> said = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      said.put((String) pairs[i], pairs[i + 1]);
    }
    return new Entry(0, said);
  }

  public List<FleetLine> all() {
    return list.lines(
        new FleetList.Search("", "", "", "", "", ""), FleetList.Order.SCORE, null, 1000);
  }
}
