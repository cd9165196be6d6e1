package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;

/** Units of the store one after the other, without holding them all in memory. */
record StoredUnits(Fleet fleet, FleetFilter filter) implements Iterable<UnitHistory> {

  static StoredUnits of(Fleet fleet, String customer) {
    return new StoredUnits(fleet, new FleetFilter(customer, "", "", "", ""));
  }

  @Override
  public void forEach(Consumer<? super UnitHistory> each) {
    fleet.eachHistory(filter, each::accept);
  }

  /** Holds them all: for small fleets only. */
  @Override
  public Iterator<UnitHistory> iterator() {
    List<UnitHistory> all = new ArrayList<>();
    forEach(all::add);
    return all.iterator();
  }
}
