package coldround.upkeep;

import java.util.Collection;

/** What is arranged for the tasks of units now. */
public interface ArrangementList {
  Arrangements of(Collection<String> unitIds);
}
