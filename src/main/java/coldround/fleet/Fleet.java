package coldround.fleet;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What is stored of the fleet, for whoever computes from it. */
public interface Fleet {

  /** Everything about one unit, if there is one of that id. */
  Optional<UnitHistory> history(String unitId);

  /**
   * Everything about each unit that fits, retired ones included, one after the other in a fixed
   * order, without holding them all in memory.
   */
  void eachHistory(FleetFilter filter, Consumer<UnitHistory> each);

  /** The same for the units of these ids. */
  void eachHistory(Collection<String> unitIds, Consumer<UnitHistory> each);

  List<Customer> customers();

  /** Sites of a customer, or of all for an empty code. */
  List<Site> sites(String customer);

  List<Technician> technicians();

  List<TravelTime> travelTimes();
}
