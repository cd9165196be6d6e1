package coldround.fleet;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * What a value that cannot be may have been meant as.
 *
 * @param how the slip: unit of measure or decimal point
 */
record Slip(Quantity meant, String how) {

  private static final int MOST_TOLD = 2;
  private static final List<Double> SHIFTS = List.of(0.1, 10.0, 0.01, 100.0);

  /** Every slip that is usual with a value of that kind, units of measure first. */
  static List<Slip> of(Quantity written) {
    List<Slip> slips = new ArrayList<>();
    for (Measure other : readAs(written.measure())) {
      slips.add(new Slip(new Quantity(written.value(), other), "unit of measure"));
    }
    for (double shift : SHIFTS) {
      slips.add(
          new Slip(new Quantity(written.value() * shift, written.measure()), "decimal point"));
    }
    return slips;
  }

  private static List<Measure> readAs(Measure written) {
    List<Measure> kin =
        switch (written.dimension()) {
          case PRESSURE_GAUGE, PRESSURE_ABSOLUTE ->
              List.of(Measure.KPAG, Measure.PSIG, Measure.BARG);
          case TEMPERATURE -> List.of(Measure.DEG_F, Measure.DEG_C);
          case MASS -> List.of(Measure.OUNCE, Measure.POUND, Measure.KG, Measure.GRAM);
          default -> List.of();
        };
    return kin.stream().filter(other -> !other.equals(written)).toList();
  }

  /**
   * The likely ones in words, such as " Perhaps 117 psig (decimal point)."; empty when none fits.
   *
   * @param fits what could be
   * @param distance how far it lies from what is usual
   */
  static String told(
      Quantity written, Predicate<Quantity> fits, ToDoubleFunction<Quantity> distance) {
    String likely =
        of(written).stream()
            .filter(slip -> fits.test(slip.meant()))
            .sorted(Comparator.comparingDouble(slip -> distance.applyAsDouble(slip.meant())))
            .limit(MOST_TOLD)
            .map(slip -> slip.meant() + " (" + slip.how() + ")")
            .collect(Collectors.joining(" or "));
    return likely.isEmpty() ? "" : " Perhaps " + likely + " was meant.";
  }
}
