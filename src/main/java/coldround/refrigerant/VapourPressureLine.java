package coldround.refrigerant;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * One curve of pressure over temperature: linear ln p against 1/T between nodes, which inverts
 * exactly and cannot overshoot. Against the 1 K source table it errs by less than 0.05 K.
 */
final class VapourPressureLine {

  static final double ZERO_C_K = 273.15;
  // a node asked for by its own rounded value still counts as inside
  private static final double SLACK = 1e-9;

  private final double[] temperatureC;
  private final double[] perK;
  private final double[] lnKpa;
  private final double[] lnKpaPerPerK;

  /**
   * @param temperatureC ascending
   * @param pressureKpa absolute, ascending
   */
  VapourPressureLine(double[] temperatureC, double[] pressureKpa) {
    this.temperatureC = temperatureC.clone();
    this.perK = Arrays.stream(temperatureC).map(t -> 1 / (t + ZERO_C_K)).toArray();
    this.lnKpa = Arrays.stream(pressureKpa).map(Math::log).toArray();
    this.lnKpaPerPerK = new double[lnKpa.length - 1];
    for (int i = 0; i < lnKpaPerPerK.length; i++) {
      lnKpaPerPerK[i] = (lnKpa[i + 1] - lnKpa[i]) / (perK[i + 1] - perK[i]);
    }
  }

  double lowestC() {
    return temperatureC[0];
  }

  double highestC() {
    return temperatureC[temperatureC.length - 1];
  }

  double lowestKpa() {
    return Math.exp(lnKpa[0]);
  }

  double highestKpa() {
    return Math.exp(lnKpa[lnKpa.length - 1]);
  }

  boolean coversTemperature(double celsius) {
    return celsius >= lowestC() - SLACK && celsius <= highestC() + SLACK;
  }

  boolean coversPressure(double kpa) {
    double ln = Math.log(kpa);
    return ln >= lnKpa[0] - SLACK && ln <= lnKpa[lnKpa.length - 1] + SLACK;
  }

  /** NaN outside the nodes. */
  double pressureKpa(double celsius) {
    if (!coversTemperature(celsius)) {
      return Double.NaN;
    }
    int i = segment(temperatureC, celsius);
    return Math.exp(lnKpa[i] + (1 / (celsius + ZERO_C_K) - perK[i]) * lnKpaPerPerK[i]);
  }

  /** NaN outside the nodes. */
  double temperatureC(double kpa) {
    double ln = Math.log(kpa);
    if (!(ln >= lnKpa[0] - SLACK && ln <= lnKpa[lnKpa.length - 1] + SLACK)) {
      return Double.NaN;
    }
    int i = segment(lnKpa, ln);
    return 1 / (perK[i] + (ln - lnKpa[i]) / lnKpaPerPerK[i]) - ZERO_C_K;
  }

  private static int segment(double[] nodes, double value) {
    int low = 0;
    int high = nodes.length - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (nodes[middle] <= value) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  double[] nodesC() {
    return temperatureC.clone();
  }

  double[] nodesKpa() {
    return Arrays.stream(lnKpa).map(Math::exp).toArray();
  }

  /**
   * The line of the mean temperature of two lines at the same pressure, over the pressures that
   * both cover. Its nodes are those of both, so between nodes it differs from the mean by less than
   * a thousandth of a kelvin.
   */
  static VapourPressureLine midpoint(VapourPressureLine bubble, VapourPressureLine dew) {
    double[] kpa =
        DoubleStream.concat(Arrays.stream(bubble.nodesKpa()), Arrays.stream(dew.nodesKpa()))
            .filter(p -> bubble.coversPressure(p) && dew.coversPressure(p))
            .sorted()
            .toArray();
    double[] distinct = withoutTwins(kpa);
    double[] mean =
        Arrays.stream(distinct)
            .map(p -> (bubble.temperatureC(p) + dew.temperatureC(p)) / 2)
            .toArray();
    return new VapourPressureLine(mean, distinct);
  }

  private static double[] withoutTwins(double[] sortedKpa) {
    double[] kept = new double[sortedKpa.length];
    int n = 0;
    for (double kpa : sortedKpa) {
      if (n == 0 || kpa > kept[n - 1] * (1 + SLACK)) {
        kept[n++] = kpa;
      }
    }
    return Arrays.copyOf(kept, n);
  }
}
