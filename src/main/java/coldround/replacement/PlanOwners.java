package coldround.replacement;

import java.time.Instant;
import java.util.List;

/** For whom replacement plans were made. */
public interface PlanOwners {

  /** A plan that was kept. */
  record Made(String id, Instant at) {}

  /** False too for a plan that there is not, and for one of several customers. */
  boolean isFor(String planId, String customer);

  /** Those of one customer alone, the newest first. */
  List<Made> of(String customer, int limit);
}
