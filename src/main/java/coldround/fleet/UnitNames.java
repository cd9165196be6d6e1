package coldround.fleet;

import java.util.Collection;
import java.util.function.Consumer;

/** By what names units are known. */
public interface UnitNames {

  /** Natural key of a unit, and its id. */
  record UnitName(String id, String customer, String site, String tag) {}

  /**
   * Units in use of these customers, in the order of their sites and tags, one after the other
   * without holding them all in memory.
   */
  void inUse(Collection<String> customers, Consumer<UnitName> each);
}
