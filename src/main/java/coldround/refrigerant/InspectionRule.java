package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * One row of scoring/leak-inspections.csv: a band of charge from its lower value up to, not
 * including, its upper one.
 *
 * @param gas ods, hfc, hfo or hcfc
 * @param basis what the band is in: lb, kg or t-CO2e
 * @param below null for no upper end
 * @param categories appliance categories concerned; none for all
 * @param when always; after-exceeding the leak rate threshold; exempt; information
 * @param gwpAbove null for no such limit
 */
record InspectionRule(
    String id,
    String schedule,
    String gas,
    String basis,
    BigDecimal from,
    BigDecimal below,
    List<String> categories,
    boolean hermeticOnly,
    String when,
    LocalDate appliesFrom,
    BigDecimal gwpAbove,
    OptionalInt months,
    OptionalInt monthsWithDetector,
    boolean detectorMandatory,
    String legalReference,
    Source source) {

  static final String FILE = "leak-inspections.csv";
  private static final String INFORMATION = "information";

  static List<InspectionRule> read(RuleTables tables) {
    return tables.read(FILE, "rule", InspectionRule::rule).stream()
        .filter(rule -> !rule.when.equals(INFORMATION))
        .toList();
  }

  private static InspectionRule rule(TableRow row) {
    String when = row.oneOf("when", Set.of("always", "after-exceeding", "exempt", INFORMATION));
    boolean decides = !when.equals(INFORMATION);
    return new InspectionRule(
        row.required("rule"),
        row.required("schedule"),
        decides ? row.oneOf("gas", Set.of("ods", "hfc", "hfo", "hcfc")) : "",
        decides ? row.oneOf("basis", Set.of("lb", "kg", "t-CO2e")) : "",
        decides ? BigDecimal.valueOf(row.number("charge_from")) : null,
        LeakScope.decimal(row, "charge_below", BigDecimal::valueOf),
        row.codes("categories"),
        row.oneOf("hermetic", Set.of("yes", "no", "any")).equals("yes"),
        when,
        row.optionalDate("applies_from").orElse(LocalDate.MIN),
        LeakScope.decimal(row, "gwp_above", BigDecimal::valueOf),
        months(row, "months", decides),
        months(row, "months_with_detector", decides),
        row.oneOf("detector_mandatory", Set.of("yes", "no")).equals("yes"),
        row.required("legal_reference"),
        LeakScope.source(row));
  }

  private static OptionalInt months(TableRow row, String column, boolean decides) {
    if (!decides || row.required(column).equals("none")) {
      return OptionalInt.empty();
    }
    row.number(column, 1, 120);
    return OptionalInt.of(row.whole(column));
  }

  boolean exempts() {
    return when.equals("exempt");
  }

  /** Whether the rule is about that circuit, its charge left aside. */
  boolean concerns(ChargedCircuit circuit, LocalDate date) {
    return groupOf(circuit.gas())
        && (categories.isEmpty() || categories.contains(circuit.category()))
        && (!hermeticOnly || circuit.hermetic())
        && !date.isBefore(appliesFrom)
        && (gwpAbove == null || gwp(circuit).compareTo(gwpAbove) > 0);
  }

  private boolean groupOf(Refrigerant refrigerant) {
    return switch (gas) {
      case "ods" -> refrigerant.depletesOzone();
      case "hcfc" -> refrigerant.family().equals("HCFC");
      case "hfo" -> refrigerant.family().equals("HFO");
      default -> refrigerant.holdsHfc();
    };
  }

  private static BigDecimal gwp(ChargedCircuit circuit) {
    return BigDecimal.valueOf(circuit.gas().gwpAr4());
  }

  boolean inBand(ChargedCircuit circuit) {
    BigDecimal amount = basis.equals("t-CO2e") ? circuit.tonnesCo2e() : circuit.chargeKg();
    return amount.compareTo(inKgOrTonnes(from)) >= 0
        && (below == null || amount.compareTo(inKgOrTonnes(below)) < 0);
  }

  private BigDecimal inKgOrTonnes(BigDecimal limit) {
    return basis.equals("lb") ? ExactMass.pounds(limit.doubleValue()) : limit;
  }

  String band() {
    String unit = basis.replace("t-CO2e", "t CO2e");
    return from.stripTrailingZeros().toPlainString() + " " + unit;
  }
}
