package coldround.fleet;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** What is stored of the fleet, for whoever computes from it. */
public interface Fleet {

  /** Everything about one unit, if there is one of that id. */
  Optional<UnitHistory> history(String unitId);

  /**
   * Works on everything about each unit that fits, retired ones included, without holding them all
   * in memory. Several units are worked on at once, the results are taken in a fixed order by the
   * calling thread.
   *
   * @param work computes from the history alone: it is called from several threads
   */
  <T> void each(FleetFilter filter, Function<UnitHistory, T> work, Consumer<T> take);

  /** The same for the units of these ids. */
  <T> void each(Collection<String> unitIds, Function<UnitHistory, T> work, Consumer<T> take);

  /** Everything about each unit that fits, one after the other. */
  default void eachHistory(FleetFilter filter, Consumer<UnitHistory> each) {
    each(filter, Function.identity(), each);
  }

  /** The same for the units of these ids. */
  default void eachHistory(Collection<String> unitIds, Consumer<UnitHistory> each) {
    each(unitIds, Function.identity(), each);
  }

  List<Customer> customers();

  /** Sites of a customer, or of all for an empty code. */
  List<Site> sites(String customer);

  List<Technician> technicians();

  List<TravelTime> travelTimes();
}
