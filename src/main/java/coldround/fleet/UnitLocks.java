package coldround.fleet;

import java.util.Collection;
import java.util.List;

/**
 * Lets whoever changes what is stored of a unit in one after the other: each sees what the one
 * before it left. Held before anything of the units is read or written, and until the end of the
 * transaction; who holds several takes them in the order of their ids.
 */
public interface UnitLocks {

  /** Waits for the units; ids that there are not are left out. */
  void hold(Collection<String> unitIds);

  /**
   * Units behind another one in the order of ids, without holding them.
   *
   * @param after empty for the first
   */
  List<String> next(String after, int most);
}
