package coldround.rounds;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The plans that have been made or are being made. */
public interface Rounds {

  /**
   * A plan and how it stands.
   *
   * @param plan the best so far, empty before there is one
   */
  record Entry(Standing standing, Optional<RoundPlan> plan) {
    /** What one technician needs to know of it. */
    public Entry only(String technician) {
      return new Entry(standing, plan.map(its -> its.only(technician)));
    }
  }

  /** As far as it is there for the caller: a technician sees the own rounds alone. */
  Optional<Entry> find(String id);

  /**
   * Begins to plan for everybody, with the usual time.
   *
   * @param once by which the same wish is known when it comes again; null or empty for none
   * @return id of the plan, that of the first time where it came before
   */
  String plan(LocalDate from, LocalDate to, String once);

  /** The newest first; for a technician those with rounds of their own. */
  List<Standing> latest(int limit);
}
