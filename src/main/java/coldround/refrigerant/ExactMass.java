package coldround.refrigerant;

import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.util.Map;

/** Mass in kilograms without rounding: what the law compares must not lose a digit. */
public final class ExactMass {

  // the pound is 0.45359237 kg by definition (NIST SP 811), the ounce a sixteenth of it
  private static final BigDecimal KG_PER_LB = new BigDecimal("0.45359237");
  private static final Map<Measure, BigDecimal> KG_PER =
      Map.of(
          Measure.KG,
          BigDecimal.ONE,
          Measure.GRAM,
          new BigDecimal("0.001"),
          Measure.POUND,
          KG_PER_LB,
          Measure.OUNCE,
          KG_PER_LB.divide(BigDecimal.valueOf(16)));

  private ExactMass() {}

  /**
   * @throws IllegalArgumentException when the measure is none of mass
   */
  public static BigDecimal kg(BigDecimal value, Measure measure) {
    BigDecimal factor = KG_PER.get(measure);
    if (factor == null || measure.dimension() != Dimension.MASS) {
      throw new IllegalArgumentException(measure + " is no measure of mass");
    }
    return value.multiply(factor);
  }

  /** The decimal that was written down, as the shortest one that reads back the same. */
  public static BigDecimal kg(Quantity mass) {
    return kg(BigDecimal.valueOf(mass.value()), mass.measure());
  }

  static BigDecimal pounds(double pounds) {
    return kg(BigDecimal.valueOf(pounds), Measure.POUND);
  }

  static Quantity told(BigDecimal kg) {
    return new Quantity(kg.doubleValue(), Measure.KG);
  }
}
