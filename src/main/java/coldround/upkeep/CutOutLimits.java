package coldround.upkeep;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;

/** Condensing temperatures at which a cut-out may be set: scoring/cut-out-limits.csv. */
final class CutOutLimits {

  private static final String FILE = "cut-out-limits.csv";
  private static final String ANY = "*";

  record CutOutLimit(String refrigerant, Quantity least, Quantity most, Source source) {
    CutOutLimit {
      if (least.measure().dimension() != Dimension.TEMPERATURE) {
        throw new IllegalArgumentException("a cut-out limit must be a temperature");
      }
      if (least.base() >= most.base()) {
        throw new IllegalArgumentException("least " + least + " must be below most " + most);
      }
    }
  }

  private final Map<String, CutOutLimit> byRefrigerant = new HashMap<>();

  private CutOutLimits() {}

  static CutOutLimits load(RuleTables tables) {
    CutOutLimits limits = new CutOutLimits();
    tables
        .read(FILE, "refrigerant", CutOutLimits::limit)
        .forEach(limit -> limits.byRefrigerant.put(limit.refrigerant, limit));
    if (!limits.byRefrigerant.containsKey(ANY)) {
      tables.problem(FILE, 0, "refrigerant", "the row '*' is missing");
    }
    return limits;
  }

  private static CutOutLimit limit(TableRow row) {
    return new CutOutLimit(
        row.required("refrigerant"),
        row.quantity("least", "measure"),
        row.quantity("most", "measure"),
        row.source());
  }

  CutOutLimit of(String refrigerant) {
    return byRefrigerant.getOrDefault(refrigerant, byRefrigerant.get(ANY));
  }
}
