package coldround.benchmark;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.Map;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.BenchmarkResult;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * {@code saturation [PROCESSES]}: single saturation lookups by JMH, nanoseconds and bytes each,
 * process by process.
 */
final class SaturationLookups implements Benchmarks.Program {

  private static final int PROCESSES = 5;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("saturation [PROCESSES]", 0, 1, arguments);
    // which JMH hands on to its processes
    System.setProperty("java.class.path", Benchmarks.classpath());
    var options =
        new OptionsBuilder()
            .include(SaturationBenchmark.class.getName())
            .forks(asked.number(0, PROCESSES))
            .addProfiler(GCProfiler.class)
            .build();
    Map<String, Object> figures = new LinkedHashMap<>();
    for (RunResult run : new Runner(options).run()) {
      String name = run.getPrimaryResult().getLabel();
      double[] nanos =
          run.getBenchmarkResults().stream()
              .map(BenchmarkResult::getPrimaryResult)
              .mapToDouble(result -> result.getScore())
              .toArray();
      figures.put(name + "Ns", nanos);
      figures.put(name + "Bytes", bytes(run));
    }
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }

  private static double bytes(RunResult run) {
    return run.getSecondaryResults().entrySet().stream()
        .filter(each -> each.getKey().endsWith("gc.alloc.rate.norm"))
        .mapToDouble(each -> each.getValue().getScore())
        .findFirst()
        .orElseThrow();
  }
}
