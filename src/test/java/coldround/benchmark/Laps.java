package coldround.benchmark;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Seconds of the same few steps, taken again and again. */
final class Laps {

  private final List<List<Double>> seconds;
  private long since;

  Laps(int steps) {
    seconds = Stream.generate(() -> (List<Double>) new ArrayList<Double>()).limit(steps).toList();
  }

  void begin() {
    since = System.nanoTime();
  }

  /** Ends a step; the next one begins. */
  void lap(int step) {
    long now = System.nanoTime();
    seconds.get(step).add((now - since) / 1e9);
    since = now;
  }

  double last(int step) {
    List<Double> its = seconds.get(step);
    return its.get(its.size() - 1);
  }

  /** The middle one of the rounds. */
  double median(int step) {
    List<Double> sorted = seconds.get(step).stream().sorted(Comparator.naturalOrder()).toList();
    return sorted.get(sorted.size() / 2);
  }

  /** Seconds of a step, round by round. */
  double[] rounds(int step) {
    return seconds.get(step).stream().mapToDouble(Double::doubleValue).toArray();
  }
}
