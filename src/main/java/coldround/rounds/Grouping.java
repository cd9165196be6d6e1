package coldround.rounds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Puts the jobs of a site that the same people may do on the same days together into calls, so that
 * one technician does them in one go. Units stay whole where they can, the most pressing first.
 */
final class Grouping {

  private static final Comparator<List<Job>> PRESSING =
      Comparator.comparing((List<Job> unit) -> due(unit)).thenComparing(unit -> unit.get(0).task());

  /** What jobs must have in common to be one call. */
  private record Kind(
      String site, Set<String> skills, LocalDate first, LocalDate last, boolean mandatory) {}

  private final Order order;
  private final LocalDate nextChance;
  private final Map<String, Double> longest;

  /**
   * @param nextChance first day on which what is left out can be done
   * @param longest minutes of the longest call by site
   */
  Grouping(Order order, LocalDate nextChance, Map<String, Double> longest) {
    this.order = order;
    this.nextChance = nextChance;
    this.longest = longest;
  }

  List<Call> calls(List<Job> jobs) {
    Map<Kind, List<Job>> kinds = new LinkedHashMap<>();
    jobs.stream()
        .sorted(Comparator.comparing(Job::site).thenComparing(Job::due).thenComparing(Job::task))
        .forEach(job -> kinds.computeIfAbsent(kind(job), kind -> new ArrayList<>()).add(job));
    List<Call> calls = new ArrayList<>();
    kinds.forEach((kind, all) -> split(kind, all, calls));
    return calls;
  }

  private Kind kind(Job job) {
    boolean mandatory = job.lawful() != null && job.lawful().isBefore(nextChance);
    LocalDate first = job.earliest().isBefore(order.from()) ? order.from() : job.earliest();
    // what is late already has no last day left to keep
    boolean late = job.lawful() == null || job.lawful().isBefore(order.from());
    LocalDate last = late || job.lawful().isAfter(order.to()) ? null : job.lawful();
    return new Kind(job.site(), job.skills(), first, last, mandatory);
  }

  private void split(Kind kind, List<Job> jobs, List<Call> calls) {
    double most = longest.get(kind.site);
    List<Job> together = new ArrayList<>();
    for (List<Job> unit : units(jobs)) {
      if (minutes(together) + minutes(unit) > most && minutes(unit) <= most) {
        close(kind, together, calls);
      }
      for (Job job : unit) {
        if (minutes(together) + job.minutes() > most) {
          close(kind, together, calls);
        }
        together.add(job);
      }
    }
    close(kind, together, calls);
  }

  private static List<List<Job>> units(List<Job> jobs) {
    Map<String, List<Job>> units =
        jobs.stream()
            .collect(Collectors.groupingBy(Job::unit, LinkedHashMap::new, Collectors.toList()));
    return units.values().stream().sorted(PRESSING).toList();
  }

  private static void close(Kind kind, List<Job> together, List<Call> calls) {
    if (!together.isEmpty()) {
      String id = "c" + together.get(0).task();
      calls.add(new Call(id, kind.site, together, kind.first, kind.last, kind.mandatory, null));
      together.clear();
    }
  }

  private static int minutes(List<Job> jobs) {
    return jobs.stream().mapToInt(Job::minutes).sum();
  }

  private static LocalDate due(List<Job> unit) {
    return unit.stream().map(Job::due).min(Comparator.naturalOrder()).orElseThrow();
  }
}
