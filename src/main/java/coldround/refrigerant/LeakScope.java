package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.TableRow;
import java.math.BigDecimal;
import java.util.Map;
import java.util.function.DoubleFunction;

/** What rows about leaks have in common: the group of gases, exact cells, trust in the source. */
final class LeakScope {

  static final String ODS = "ods";
  static final String HFC = "hfc";

  private static final Map<String, String> TRUST =
      Map.of(
          "read", "",
          "partly", " (partly from memory: check before relying on it)",
          "memory", " (from memory: check before relying on it)",
          "assumed", " (assumed: check before relying on it)");

  private LeakScope() {}

  /** Group of a gas in the rules of the United States; other for one they leave out. */
  static String group(Refrigerant gas) {
    if (gas.depletesOzone()) {
      return ODS;
    }
    return gas.holdsHfc() ? HFC : "other";
  }

  /** Null for an empty cell. */
  static BigDecimal decimal(TableRow row, String column, DoubleFunction<BigDecimal> exact) {
    return row.optionalNumber(column).isPresent() ? exact.apply(row.number(column)) : null;
  }

  static Source source(TableRow row) {
    Source plain = row.source();
    String trust = TRUST.get(row.oneOf("trust", TRUST.keySet()));
    String legal = row.required("legal_reference");
    String told = plain.citation().equals(legal) ? legal : legal + "; " + plain.citation();
    return new Source(plain.table(), plain.row(), told + trust);
  }
}
