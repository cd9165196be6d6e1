package coldround.scoring.statistics;

import org.apache.commons.numbers.gamma.IncompleteGamma;

/**
 * The upper incomplete gamma function times e to its lower limit, which stays finite for old age.
 */
final class IncompleteGammaTail {

  /** Up to here the product of the two library functions neither overflows nor loses digits. */
  private static final double DIRECT = 100;

  private static final double TINY = 1e-300;

  private IncompleteGammaTail() {}

  /** exp(x) times the integral of t^(a-1) e^-t from x to infinity. */
  static double scaled(double a, double x) {
    return x <= DIRECT
        ? Math.exp(x) * IncompleteGamma.Upper.value(a, x)
        : Math.pow(x, a) * fraction(a, x);
  }

  /** Continued fraction of Legendre by the modified method of Lentz; quick for x well above a. */
  private static double fraction(double a, double x) {
    double b = x + 1 - a;
    double c = 1 / TINY;
    double d = 1 / b;
    double h = d;
    for (int i = 1; i < 100; i++) {
      double an = -i * (i - a);
      b += 2;
      d = 1 / nonZero(an * d + b);
      c = nonZero(b + an / c);
      double step = c * d;
      h *= step;
      if (Math.abs(step - 1) < 1e-16) {
        break;
      }
    }
    return h;
  }

  private static double nonZero(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }
}
