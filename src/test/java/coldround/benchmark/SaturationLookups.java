package coldround.benchmark;

import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.table.RuleTables;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * Times single saturation lookups over all curves at random places: nanoseconds and bytes each. The
 * floor is the two library calls that no lookup can do without, on the same numbers.
 */
final class SaturationLookups implements Benchmarks.Program {

  private static final int QUESTIONS = 1 << 16;
  private static final int ROUNDS = 60;
  private static final int WARM_UP = 20;
  private static final long SEED = 20260701;

  private record Question(SaturationCurve curve, double celsius, double kpa) {}

  @Override
  public void run(String... arguments) {
    Question[] asked = questions();
    double floor = nanos(i -> Math.exp(1 / (asked[i].celsius + 300)) + Math.log(asked[i].kpa));
    double forward = nanos(i -> asked[i].curve.dewPressureKpa(asked[i].celsius));
    double back = nanos(i -> asked[i].curve.dewTemperatureC(asked[i].kpa));
    double midpoint = nanos(i -> asked[i].curve.midpointTemperatureC(asked[i].kpa));
    double bytes = bytes(i -> asked[i].curve.dewTemperatureC(asked[i].kpa));
    System.out.printf(
        Locale.ROOT,
        "{\"floorNs\":%.1f,\"pressureNs\":%.1f,\"temperatureNs\":%.1f,\"midpointNs\":%.1f,"
            + "\"bytesEach\":%.3f}%n",
        floor,
        forward,
        back,
        midpoint,
        bytes);
  }

  private static Question[] questions() {
    RuleTables tables = new RuleTables("scoring", null);
    Refrigerants refrigerants = Refrigerants.load(tables);
    tables.check();
    List<SaturationCurve> curves =
        refrigerants.all().stream()
            .map(Refrigerant::designation)
            .flatMap(name -> refrigerants.curve(name).stream())
            .toList();
    Random random = new Random(SEED);
    Question[] asked = new Question[QUESTIONS];
    for (int i = 0; i < QUESTIONS; i++) {
      asked[i] = question(curves.get(random.nextInt(curves.size())), random.nextDouble());
    }
    return asked;
  }

  /** Within what the midpoint covers too: the pressures where both curves reach. */
  private static Question question(SaturationCurve curve, double share) {
    double low = Math.log(curve.bubblePressureKpa(curve.lowestC()) * (1 + 1e-9));
    double high = Math.log(curve.dewPressureKpa(curve.highestC()) * (1 - 1e-9));
    double kpa = Math.exp(low + share * (high - low));
    return new Question(curve, curve.dewTemperatureC(kpa), kpa);
  }

  /** Median over rounds of the mean of one lookup, after warming up. */
  private static double nanos(IntToDoubleFunction lookup) {
    double[] each = new double[ROUNDS];
    double sink = 0;
    for (int round = -WARM_UP; round < ROUNDS; round++) {
      long start = System.nanoTime();
      sink += all(lookup);
      if (round >= 0) {
        each[round] = (System.nanoTime() - start) / (double) QUESTIONS;
      }
    }
    Arrays.sort(each);
    if (Double.isNaN(sink)) {
      throw new IllegalStateException("a lookup gave no number");
    }
    return each[ROUNDS / 2];
  }

  private static double all(IntToDoubleFunction lookup) {
    double sum = 0;
    for (int i = 0; i < QUESTIONS; i++) {
      sum += lookup.applyAsDouble(i);
    }
    return sum;
  }

  private static double bytes(IntToDoubleFunction lookup) {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    all(lookup);
    long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
    double sum = all(lookup);
    long used = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
    if (Double.isNaN(sum)) {
      throw new IllegalStateException("a lookup gave no number");
    }
    return used / (double) QUESTIONS;
  }
}
