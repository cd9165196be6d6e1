package coldround.replacement;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.scoring.KindRule;
import coldround.scoring.ScoringRules;
import coldround.scoring.statistics.GammaPoisson;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import coldround.upkeep.Cost;
import coldround.upkeep.Costs;
import coldround.upkeep.Upkeep;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The tables that replacement is computed with: scoring/economics.csv and what it shares. */
public final class Economics {

  private static final String FILE = "economics.csv";
  private static final List<String> NEEDED =
      List.of("disposal", "downtime", "downtime-hours", "recovery", "shutdown");

  /**
   * One row.
   *
   * @param value percentages as shares
   * @param shown as the table has it
   */
  public record Rate(
      String row,
      double value,
      Quantity shown,
      Quantity low,
      Quantity high,
      String meaning,
      Source source) {}

  private final Map<EconomicRate, Rate> rates = new EnumMap<>(EconomicRate.class);
  private final Map<String, KindRule> kinds = new LinkedHashMap<>();
  private final Map<String, String> modes = new LinkedHashMap<>();
  private final ScoringRules scoring;
  private final Upkeep upkeep;

  private Economics(ScoringRules scoring, Upkeep upkeep) {
    this.scoring = scoring;
    this.upkeep = upkeep;
  }

  /** Reads them; problems are left with the tables. */
  public static Economics load(RuleTables tables, ScoringRules scoring, Upkeep upkeep) {
    Economics economics = new Economics(scoring, upkeep);
    Map<String, Rate> byRow = new HashMap<>();
    tables.read(FILE, "rate", Economics::rate).forEach(rate -> byRow.put(rate.row, rate));
    for (EconomicRate name : EconomicRate.values()) {
      if (byRow.containsKey(name.row())) {
        economics.rates.put(name, byRow.get(name.row()));
      } else {
        tables.problem(FILE, 0, "rate", "the row '" + name.row() + "' is missing");
      }
    }
    for (String group : NEEDED) {
      if (!economics.costs().has(group, "*")) {
        tables.problem("costs.csv", 0, "group", "no row of group " + group + " for *");
      }
    }
    scoring.kinds().all().forEach(kind -> economics.kinds.put(kind.kind(), kind));
    tables
        .read(
            "failure-modes.csv",
            "mode",
            row -> Map.entry(row.required("mode"), row.required("name")))
        .forEach(mode -> economics.modes.put(mode.getKey(), mode.getValue()));
    return economics;
  }

  private static Rate rate(TableRow row) {
    Quantity value = row.quantity("value", "measure");
    Quantity low = new Quantity(row.number("low"), value.measure());
    Quantity high = new Quantity(row.number("high"), value.measure());
    if (low.value() > value.value() || high.value() < value.value()) {
      throw new IllegalArgumentException(value + " does not lie between its low and high end");
    }
    return new Rate(
        row.required("rate"),
        share(value),
        value,
        low,
        high,
        row.required("meaning"),
        row.source());
  }

  private static double share(Quantity value) {
    Dimension dimension = value.measure().dimension();
    return dimension == Dimension.SHARE || dimension == Dimension.SHARE_PER_YEAR
        ? value.value() / 100
        : value.value();
  }

  public double value(EconomicRate name) {
    return rates.get(name).value;
  }

  public Rate rate(EconomicRate name) {
    return rates.get(name);
  }

  public Collection<Rate> rates() {
    return List.copyOf(rates.values());
  }

  public Costs costs() {
    return upkeep.costs();
  }

  Upkeep upkeep() {
    return upkeep;
  }

  /** Name of a failure mode for a person. */
  public String modeName(String mode) {
    return modes.getOrDefault(mode, mode);
  }

  Map<String, String> modes() {
    return modes;
  }

  /** Rate of discounting where nobody says: that of a business, real. */
  public Cost discount() {
    return costs().of("discount", "business");
  }

  boolean food(String kind) {
    return kinds.containsKey(kind) && kinds.get(kind).food();
  }

  /** Name of a kind for a person. */
  public String kindName(String kind) {
    return kinds.containsKey(kind) ? kinds.get(kind).name() : kind;
  }

  /** Faults a year of a unit of that kind of which nothing is known; empty for no such kind. */
  Optional<GammaPoisson> usualFaults(String kind) {
    return Optional.ofNullable(kinds.get(kind))
        .map(rule -> scoring.faultPriors().byClass().get(rule.faultClass()))
        .map(prior -> prior.rate());
  }
}
