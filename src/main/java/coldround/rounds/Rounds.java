package coldround.rounds;

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

  /** The newest first. */
  List<Standing> latest(int limit);
}
