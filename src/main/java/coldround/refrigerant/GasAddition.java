package coldround.refrigerant;

import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Objects;

/**
 * Refrigerant that was put into a circuit.
 *
 * @param kg exact, above zero
 * @param counts false where the law does not count it: the first fill of a new or retrofitted
 *     appliance, or gas put back after a season; its date still ends the days since the addition
 *     before
 */
public record GasAddition(LocalDate date, BigDecimal kg, boolean counts) {

  /**
   * @throws IllegalArgumentException for a mass that is not above zero
   */
  public GasAddition {
    Objects.requireNonNull(date);
    if (kg.signum() <= 0) {
      throw new IllegalArgumentException(
          "an addition must be more than nothing, not " + kg + " kg");
    }
  }

  /** An addition that makes good a loss. */
  public static GasAddition of(LocalDate date, Quantity mass) {
    return new GasAddition(date, ExactMass.kg(mass), true);
  }
}
