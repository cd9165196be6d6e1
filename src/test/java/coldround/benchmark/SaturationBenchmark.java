package coldround.benchmark;

import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.table.RuleTables;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Single saturation lookups over all curves at random places. Their alternative is the cheapest one
 * that is right: rows of a degree each, as a printed chart has them, found by a binary search of
 * the pressure as it is and joined by straight lines.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 4, time = 500, timeUnit = TimeUnit.MILLISECONDS)
public class SaturationBenchmark {

  private static final int QUESTIONS = 1 << 16;
  private static final long SEED = 20260701;

  /** What both may differ by; see VapourPressureLine for what the curve may be off its source. */
  private static final double RIGHT_K = 0.05;

  private SaturationCurve[] curves;
  private Rows[] rows;
  private double[] celsius;
  private double[] kpa;
  private int next;

  /** Pressures and temperatures of rows a degree apart, and of the last. */
  private record Rows(double[] kpa, double[] celsius) {

    static Rows of(SaturationCurve curve) {
      int count = (int) Math.ceil(curve.highestC() - curve.lowestC()) + 1;
      double[] celsius = new double[count];
      Arrays.setAll(celsius, i -> Math.min(curve.lowestC() + i, curve.highestC()));
      return new Rows(Arrays.stream(celsius).map(curve::dewPressureKpa).toArray(), celsius);
    }

    double temperatureC(double pressure) {
      int found = Arrays.binarySearch(kpa, pressure);
      if (found >= 0) {
        return celsius[found];
      }
      int above = -found - 1;
      double share = (pressure - kpa[above - 1]) / (kpa[above] - kpa[above - 1]);
      return celsius[above - 1] + share * (celsius[above] - celsius[above - 1]);
    }
  }

  /**
   * @throws IllegalStateException where the alternative is not right
   */
  @Setup
  public void ask() {
    RuleTables tables = new RuleTables("scoring", null);
    Refrigerants refrigerants = Refrigerants.load(tables);
    tables.check();
    List<SaturationCurve> all =
        refrigerants.all().stream()
            .map(Refrigerant::designation)
            .flatMap(name -> refrigerants.curve(name).stream())
            .toList();
    List<Rows> charts = all.stream().map(Rows::of).toList();
    Random random = new Random(SEED);
    curves = new SaturationCurve[QUESTIONS];
    rows = new Rows[QUESTIONS];
    celsius = new double[QUESTIONS];
    kpa = new double[QUESTIONS];
    for (int i = 0; i < QUESTIONS; i++) {
      int curve = random.nextInt(all.size());
      curves[i] = all.get(curve);
      rows[i] = charts.get(curve);
      kpa[i] = pressure(curves[i], random.nextDouble());
      celsius[i] = curves[i].dewTemperatureC(kpa[i]);
      if (Math.abs(rows[i].temperatureC(kpa[i]) - celsius[i]) > RIGHT_K) {
        throw new IllegalStateException(curves[i].designation() + " at " + kpa[i] + " kPa");
      }
    }
  }

  /** Within what the midpoint covers too: the pressures where both curves reach. */
  private static double pressure(SaturationCurve curve, double share) {
    double low = Math.log(curve.bubblePressureKpa(curve.lowestC()) * (1 + 1e-9));
    double high = Math.log(curve.dewPressureKpa(curve.highestC()) * (1 - 1e-9));
    return Math.exp(low + share * (high - low));
  }

  private int next() {
    next = (next + 1) % QUESTIONS;
    return next;
  }

  @Benchmark
  public double temperature() {
    int i = next();
    return curves[i].dewTemperatureC(kpa[i]);
  }

  @Benchmark
  public double pressure() {
    int i = next();
    return curves[i].dewPressureKpa(celsius[i]);
  }

  @Benchmark
  public double midpoint() {
    int i = next();
    return curves[i].midpointTemperatureC(kpa[i]);
  }

  @Benchmark
  public double rows() {
    int i = next();
    return rows[i].temperatureC(kpa[i]);
  }
}
