package coldround.replacement;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/**
 * What would have to be true for the best year of a unit to be another.
 *
 * @param assumption that is moved, all others staying
 * @param below factor on it at or below which the answer changes; empty when none down to a quarter
 * @param above factor at or above which it changes; empty when none up to fourfold
 */
public record Sensitivity(String assumption, OptionalDouble below, OptionalDouble above) {

  private static final double MOST = 4;
  private static final double STEP = 1.1;
  private static final int HALVINGS = 12;
  private static final double LEAST_RATE = -0.9;

  public static List<Sensitivity> of(UnitOutlook unit, Discount discount) {
    List<Sensitivity> all = new ArrayList<>();
    all.add(of("price of a new one", f -> unit.times(f, 1, 1, 1).bestYear(discount).year()));
    all.add(of("cost of faults", f -> unit.times(1, f, 1, 1).bestYear(discount).year()));
    all.add(of("cost of refrigerant", f -> unit.times(1, 1, f, 1).bestYear(discount).year()));
    all.add(of("cost of electricity", f -> unit.times(1, 1, 1, f).bestYear(discount).year()));
    all.add(of("discount rate", f -> unit.bestYear(times(discount, f)).year()));
    return all;
  }

  /** A rate far below 0 cannot be multiplied as far as the others: -100 % a year is the end. */
  private static Discount times(Discount discount, double factor) {
    return new Discount(Math.max(LEAST_RATE, discount.rate() * factor));
  }

  private static Sensitivity of(String assumption, DoubleFunction<Integer> year) {
    return new Sensitivity(assumption, flip(year, 1 / STEP), flip(year, STEP));
  }

  private static OptionalDouble flip(DoubleFunction<Integer> year, double step) {
    int now = year.apply(1);
    double same = 1;
    for (double factor = step; factor <= MOST && factor >= 1 / MOST; factor *= step) {
      if (year.apply(factor) != now) {
        return OptionalDouble.of(between(year, now, same, factor));
      }
      same = factor;
    }
    return OptionalDouble.empty();
  }

  private static double between(DoubleFunction<Integer> year, int now, double same, double other) {
    double in = same;
    double out = other;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (in + out) / 2;
      if (year.apply(middle) == now) {
        in = middle;
      } else {
        out = middle;
      }
    }
    return out;
  }
}
