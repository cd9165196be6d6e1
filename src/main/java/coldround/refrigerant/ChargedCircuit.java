package coldround.refrigerant;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * One refrigerant circuit as the leak rules see it.
 *
 * @param chargeKg full charge, exact
 * @param category appliance category of scoring/unit-categories.csv
 * @param jurisdiction ISO 3166 country with optional subdivision; may be empty
 * @param detector true when an automatic leak detection system watches it
 * @param hermetic true when sealed for good and labelled so
 */
public record ChargedCircuit(
    Refrigerant gas,
    BigDecimal chargeKg,
    String category,
    String jurisdiction,
    boolean detector,
    boolean hermetic) {

  private static final BigDecimal KG_PER_T = BigDecimal.valueOf(1000);

  /**
   * @throws IllegalArgumentException for a charge that is not above zero or no category
   */
  public ChargedCircuit {
    Objects.requireNonNull(gas);
    if (chargeKg.signum() <= 0) {
      throw new IllegalArgumentException("the full charge must be above zero, not " + chargeKg);
    }
    if (!UnitCategories.LEAK_CATEGORIES.contains(category)) {
      throw new IllegalArgumentException(
          "'" + category + "' is not one of " + UnitCategories.LEAK_CATEGORIES);
    }
  }

  /** Without a detector and not sealed for good. */
  public static ChargedCircuit of(
      Refrigerant gas, BigDecimal chargeKg, String category, String jurisdiction) {
    return new ChargedCircuit(gas, chargeKg, category, jurisdiction, false, false);
  }

  /** Exact, by the GWP of IPCC AR4 that the regulations use. */
  BigDecimal tonnesCo2e() {
    return chargeKg.multiply(BigDecimal.valueOf(gas.gwpAr4())).divide(KG_PER_T);
  }
}
