package coldround.rounds;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Work at one site that one technician does without leaving.
 *
 * @param id within its plan
 * @param site "customer/site"
 * @param first first day on which it may be done
 * @param last last day, null for any
 * @param mandatory true when it must be done within the plan whatever it costs
 * @param kept null when its time is free
 */
public record Call(
    String id,
    String site,
    List<Job> jobs,
    LocalDate first,
    LocalDate last,
    boolean mandatory,
    Kept kept) {

  public Call {
    jobs = List.copyOf(jobs);
    if (jobs.isEmpty()) {
      throw new IllegalArgumentException("a call needs work to do");
    }
  }

  public int minutes() {
    return jobs.stream().mapToInt(Job::minutes).sum();
  }

  /** Competences of all its work together. */
  public Set<String> skills() {
    return jobs.stream()
        .flatMap(job -> job.skills().stream())
        .collect(java.util.stream.Collectors.toUnmodifiableSet());
  }

  /** The earliest date that any of its work is due. */
  public LocalDate due() {
    return jobs.stream().map(Job::due).min(Comparator.naturalOrder()).orElseThrow();
  }

  /** The last day by law of any of its work, null for none. */
  public LocalDate lawful() {
    return jobs.stream()
        .map(Job::lawful)
        .filter(java.util.Objects::nonNull)
        .min(Comparator.naturalOrder())
        .orElse(null);
  }

  public boolean emergency() {
    return jobs.stream().anyMatch(job -> job.kind().equals(Job.EMERGENCY));
  }

  public Call keeping(Kept fixed) {
    return new Call(id, site, jobs, first, last, mandatory, fixed);
  }
}
