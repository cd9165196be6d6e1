package coldround.upkeep;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Map;
import java.util.TreeMap;

/** Chance of a high-head lockout in a month by its trip margin: scoring/lockout-chance.csv. */
final class LockoutChances {

  private static final String FILE = "lockout-chance.csv";

  private record Band(double marginFromK, double perMonth) {}

  private final TreeMap<Double, Double> byMargin = new TreeMap<>();

  private LockoutChances() {}

  static LockoutChances load(RuleTables tables) {
    LockoutChances chances = new LockoutChances();
    tables
        .read(FILE, "band", LockoutChances::band)
        .forEach(band -> chances.byMargin.put(band.marginFromK, band.perMonth));
    double before = 1;
    for (double chance : chances.byMargin.values()) {
      if (chance > before) {
        tables.problem(FILE, 0, "per_month", "a wider margin must not have a greater chance");
      }
      before = chance;
    }
    if (chances.byMargin.isEmpty()) {
      tables.problem(FILE, 0, "band", "there is no row");
    }
    return chances;
  }

  private static Band band(TableRow row) {
    Quantity from = row.quantity("margin_from", "measure");
    if (from.measure().dimension() != Dimension.TEMPERATURE_DIFFERENCE) {
      throw new IllegalArgumentException("margin_from must be a difference of temperature");
    }
    row.source();
    return new Band(from.base(), row.number("per_month", 0, 1));
  }

  /**
   * @param marginK trip ambient less design ambient
   */
  double perMonth(double marginK) {
    Map.Entry<Double, Double> band = byMargin.floorEntry(marginK);
    return (band != null ? band : byMargin.firstEntry()).getValue();
  }
}
