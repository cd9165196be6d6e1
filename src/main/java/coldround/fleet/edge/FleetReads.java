package coldround.fleet.edge;

import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.TravelTime;
import coldround.fleet.UnitHistory;
import coldround.fleet.UnitIds;
import coldround.fleet.edge.StoredEquipment.Equipment;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/** Reads the fleet in chunks of units by ascending id, so that memory does not grow with it. */
@ApplicationScoped
class FleetReads implements Fleet {

  private static final int CHUNK = 500;
  // some at a time: a log of many years holds more visits than units
  private static final int UNITS_AT_ONCE = 50;
  private static final OfUnits FAULTS =
      new OfUnits(
          "fault",
          "happened",
          "failure_mode",
          "cause",
          "repaired",
          "downtime",
          "stock_lost",
          "note");

  private final EntityManager entities;
  private final StoredEquipment equipment;
  private final StoredVisits stored;

  @Inject
  FleetReads(EntityManager entities, StoredEquipment equipment, StoredVisits stored) {
    this.entities = entities;
    this.equipment = equipment;
    this.stored = stored;
  }

  @Override
  @Transactional
  public Optional<UnitHistory> history(String unitId) {
    OptionalLong id = UnitIds.number(unitId);
    if (id.isEmpty()) {
      return Optional.empty();
    }
    // what was written in this transaction must be there to be read
    entities.flush();
    List<Equipment> unit = equipment.of(List.of(id.getAsLong()));
    return unit.isEmpty()
        ? Optional.empty()
        : Optional.of(reading(unit, Function.<UnitHistory>identity()).get().get(0));
  }

  @Override
  @Transactional
  public <T> void each(FleetFilter filter, Function<UnitHistory, T> work, Consumer<T> take) {
    entities.flush();
    try (InOrder<T> results = new InOrder<>(take)) {
      long after = 0;
      List<Equipment> units;
      do {
        units = equipment.next(filter, after, CHUNK);
        give(units, work, results);
        after = units.isEmpty() ? after : units.get(units.size() - 1).id();
      } while (units.size() == CHUNK);
      results.finish();
      forget();
    }
  }

  @Override
  @Transactional
  public <T> void each(
      Collection<String> unitIds, Function<UnitHistory, T> work, Consumer<T> take) {
    List<Long> ids =
        unitIds.stream()
            .map(UnitIds::number)
            .filter(OptionalLong::isPresent)
            .map(OptionalLong::getAsLong)
            .sorted()
            .toList();
    entities.flush();
    try (InOrder<T> results = new InOrder<>(take)) {
      for (int from = 0; from < ids.size(); from += CHUNK) {
        List<Long> some = ids.subList(from, Math.min(ids.size(), from + CHUNK));
        give(equipment.of(some), work, results);
      }
      results.finish();
      forget();
    }
  }

  private <T> void give(List<Equipment> units, Function<UnitHistory, T> work, InOrder<T> results) {
    for (int from = 0; from < units.size(); from += UNITS_AT_ONCE) {
      List<Equipment> some = units.subList(from, Math.min(units.size(), from + UNITS_AT_ONCE));
      results.give(reading(some, work));
    }
    forget();
  }

  /** Writes what the taker has done so far, then lets go of it. */
  private void forget() {
    entities.flush();
    entities.clear();
  }

  /** Reads the rows at once; what they say is made out when the work is done. */
  private <T> Supplier<List<T>> reading(List<Equipment> units, Function<UnitHistory, T> work) {
    List<Long> ids = units.stream().map(Equipment::id).toList();
    Map<Long, List<VisitRow>> visits = new HashMap<>();
    stored.eachOf(ids, row -> visits.computeIfAbsent(row.unitId, id -> new ArrayList<>()).add(row));
    Map<Long, List<FaultRow>> faults = new HashMap<>();
    FAULTS.each(
        entities,
        ids,
        row ->
            faults.computeIfAbsent(row.getLong(1), id -> new ArrayList<>()).add(FaultRow.of(row)));
    return () ->
        units.stream()
            .map(
                each ->
                    new UnitHistory(
                        each.site(),
                        each.unit().read(),
                        visits.getOrDefault(each.id(), List.of()).stream()
                            .map(VisitRow::read)
                            .toList(),
                        faults.getOrDefault(each.id(), List.of()).stream()
                            .map(FaultRow::read)
                            .toList()))
            .map(work)
            .toList();
  }

  @Override
  @Transactional
  public List<Customer> customers() {
    return entities
        .createQuery("from CustomerRow order by code", CustomerRow.class)
        .getResultStream()
        .map(CustomerRow::read)
        .toList();
  }

  @Override
  @Transactional
  public List<Site> sites(String customer) {
    return entities
        .createQuery(
            "from SiteRow s join fetch s.customer c where :customer = '' or c.code = :customer"
                + " order by c.code, s.code",
            SiteRow.class)
        .setParameter("customer", customer)
        .getResultStream()
        .map(SiteRow::read)
        .toList();
  }

  @Override
  @Transactional
  public List<Technician> technicians() {
    return entities
        .createQuery("from TechnicianRow order by code", TechnicianRow.class)
        .getResultStream()
        .map(TechnicianRow::read)
        .toList();
  }

  @Override
  @Transactional
  public List<TravelTime> travelTimes() {
    return entities
        .createQuery("from TravelTimeRow order by fromPlace, toPlace", TravelTimeRow.class)
        .getResultStream()
        .map(TravelTimeRow::read)
        .toList();
  }
}
