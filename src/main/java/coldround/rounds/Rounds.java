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
  record Entry(Standing standing, Optional<RoundPlan> plan) {}

  Optional<Entry> find(String id);

  /**
   * Begins to plan for everybody, with the usual time.
   *
   * @return id of the plan
   */
  String plan(LocalDate from, LocalDate to);

  /** The newest first. */
  List<Standing> latest(int limit);
}
