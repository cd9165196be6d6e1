package coldround.scoring.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Mean number of events per system by age (Nelson 1995) for systems under observation from age 0 to
 * ends of their own, with the robust standard error of Lawless and Nadeau.
 */
public final class MeanCumulativeFunction {

  /** One system: how long it was watched and the ages of its events, none after the end. */
  public record History(double end, double... ages) {}

  /**
   * One step.
   *
   * @param age of the events
   * @param atRisk systems watched up to that age or longer
   * @param events of all systems at that age
   * @param mean events per system up to and with that age
   * @param standardError of the mean
   */
  public record Step(double age, int atRisk, int events, double mean, double standardError) {}

  private MeanCumulativeFunction() {}

  /** Steps in the order of age. */
  public static List<Step> of(List<History> systems) {
    double[] ages =
        systems.stream()
            .flatMapToDouble(s -> Arrays.stream(s.ages()))
            .distinct()
            .sorted()
            .toArray();
    double[] deviations = new double[systems.size()];
    List<Step> steps = new ArrayList<>();
    double mean = 0;
    for (double age : ages) {
      int atRisk = (int) systems.stream().filter(s -> s.end() >= age).count();
      int events = systems.stream().mapToInt(s -> count(s, age)).sum();
      double rise = (double) events / atRisk;
      mean += rise;
      double variance = 0;
      for (int i = 0; i < deviations.length; i++) {
        if (systems.get(i).end() >= age) {
          deviations[i] += (count(systems.get(i), age) - rise) / atRisk;
        }
        variance += deviations[i] * deviations[i];
      }
      steps.add(new Step(age, atRisk, events, mean, Math.sqrt(variance)));
    }
    return List.copyOf(steps);
  }

  private static int count(History system, double age) {
    int count = 0;
    for (double its : system.ages()) {
      count += its == age ? 1 : 0;
    }
    return count;
  }
}
