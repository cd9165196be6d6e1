package coldround.upkeep;

import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Prices, rates and chances of scoring/costs.csv, all in one currency. A row for the very thing and
 * place goes before one for the country, and that before one for anything and anywhere.
 */
public final class Costs {

  static final String FILE = "costs.csv";
  static final String ANY = "*";
  // groups that the computations ask for by name, each with the thing whose row must be there
  private static final Map<String, String> NEEDED =
      Map.of(
          "electricity",
          ANY,
          "labour",
          ANY,
          "trip",
          ANY,
          "breakdown",
          "other",
          "stock-chance",
          "other",
          "stock",
          "food",
          "discount",
          "business",
          "refrigerant",
          ANY);

  private record Asked(String group, String of, String place) {}

  private final Map<Asked, Cost> rows = new HashMap<>();
  private final List<Cost> all = new ArrayList<>();
  // a fleet stands in few places, and every unit asks for a dozen prices
  private final Map<String, PricesAt> places = new ConcurrentHashMap<>();
  private Measure currency;

  private Costs() {}

  public static Costs load(RuleTables tables) {
    Costs costs = new Costs();
    tables.read(FILE, "cost", Costs::cost).forEach(cost -> costs.add(tables, cost));
    NEEDED.forEach(
        (group, of) -> {
          if (!costs.rows.containsKey(new Asked(group, of, ANY))) {
            String message = "no row of group " + group + " for " + of + " and any place";
            tables.problem(FILE, 0, "group", message);
          }
        });
    costs.checkCurrency(tables);
    return costs;
  }

  private static Cost cost(TableRow row) {
    Quantity value = row.quantity("value", "measure");
    if (value.value() < 0 && !row.required("group").equals("escalation")) {
      throw new IllegalArgumentException("value must not be below 0");
    }
    List<String> places = row.codes("places");
    return new Cost(
        row.required("cost"),
        row.required("group"),
        row.required("of"),
        places.isEmpty() ? List.of(ANY) : places,
        value,
        end(row.optionalNumber("low"), value.measure()),
        end(row.optionalNumber("high"), value.measure()),
        row.text("per"),
        row.source());
  }

  private static Quantity end(OptionalDouble value, Measure measure) {
    return value.isEmpty() ? null : new Quantity(value.getAsDouble(), measure);
  }

  private void add(RuleTables tables, Cost cost) {
    all.add(cost);
    for (String place : cost.places()) {
      if (rows.put(new Asked(cost.group(), cost.of(), place), cost) != null) {
        String message = "two rows of " + cost.group() + " for " + cost.of() + " in " + place;
        tables.problem(FILE, 0, "places", message);
      }
    }
  }

  private void checkCurrency(RuleTables tables) {
    Set<Measure> currencies = new HashSet<>();
    for (Cost cost : all) {
      if (cost.value().measure().dimension() == Dimension.MONEY) {
        currencies.add(cost.value().measure());
      }
    }
    if (currencies.size() != 1) {
      tables.problem(FILE, 0, "measure", "prices must all be in one currency, not " + currencies);
    }
    currency = currencies.isEmpty() ? null : currencies.iterator().next();
  }

  /** The price of a thing in a group whatever the place. */
  public Cost of(String group, String of) {
    return of(group, of, ANY);
  }

  /**
   * @param of which one; another one's row for any is taken when it has none
   * @param place ISO 3166 country with optional subdivision; may be empty
   * @throws IllegalArgumentException when the table has no row that could hold
   */
  public Cost of(String group, String of, String place) {
    Cost found = first(group, of, place);
    if (found == null && !of.equals(ANY)) {
      found = first(group, ANY, place);
    }
    if (found == null) {
      throw new IllegalArgumentException("no " + group + " of " + of + " in " + FILE);
    }
    return found;
  }

  /**
   * All that hold at a place.
   *
   * @param place ISO 3166 country with optional subdivision; may be empty
   */
  PricesAt at(String place) {
    PricesAt known = places.get(place);
    return known != null ? known : places.computeIfAbsent(place, this::pricesAt);
  }

  private PricesAt pricesAt(String place) {
    Map<String, Map<String, Cost>> groups = new HashMap<>();
    for (Cost cost : all) {
      Cost holds = first(cost.group(), cost.of(), place);
      if (holds != null) {
        groups.computeIfAbsent(cost.group(), group -> new HashMap<>()).put(cost.of(), holds);
      }
    }
    return new PricesAt(groups);
  }

  private Cost first(String group, String of, String place) {
    Cost exact = rows.get(new Asked(group, of, place));
    if (exact != null) {
      return exact;
    }
    int dash = place.indexOf('-');
    Cost country = dash < 0 ? null : rows.get(new Asked(group, of, place.substring(0, dash)));
    return country != null ? country : rows.get(new Asked(group, of, ANY));
  }

  /** True when the thing has a row of its own in the group. */
  public boolean has(String group, String of) {
    return rows.containsKey(new Asked(group, of, ANY));
  }

  /** All rows, in the order of the table. */
  public List<Cost> all() {
    return List.copyOf(all);
  }

  public Measure currency() {
    return currency;
  }

  public Quantity money(double amount) {
    return new Quantity(amount, currency);
  }
}
