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
import coldround.store.OfUnits;
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
import java.util.stream.Stream;

/** Reads the fleet in chunks of units by ascending id, so that memory does not grow with it. */
@ApplicationScoped
class FleetReads implements Fleet {

  private static final int CHUNK = 500;
  private static final int UNITS_AT_ONCE = 50;
  // fewer units at a time where each has a log of many years
  private static final int VISITS_AT_ONCE = 1000;
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
  private final LastHistory last;

  @Inject
  FleetReads(
      EntityManager entities, StoredEquipment equipment, StoredVisits stored, LastHistory last) {
    this.entities = entities;
    this.equipment = equipment;
    this.stored = stored;
    this.last = last;
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
    return unit.stream().map(this::alone).findFirst();
  }

  @Override
  @Transactional
  public <T> void each(FleetFilter filter, Function<UnitHistory, T> work, Consumer<T> take) {
    entities.flush();
    try (Shared<T> shared = new Shared<>(work, take)) {
      long after = 0;
      List<Equipment> units;
      do {
        units = equipment.next(filter, after, CHUNK);
        shared.give(units);
        after = units.isEmpty() ? after : units.get(units.size() - 1).id();
      } while (units.size() == CHUNK);
      shared.finish();
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
    if (ids.size() == 1) {
      // nobody else is woken for it
      equipment.of(ids).stream().map(this::alone).map(work).forEach(take);
      forget();
      return;
    }
    try (Shared<T> shared = new Shared<>(work, take)) {
      for (int from = 0; from < ids.size(); from += CHUNK) {
        shared.give(equipment.of(ids.subList(from, Math.min(ids.size(), from + CHUNK))));
      }
      shared.finish();
    }
  }

  /** Work on units that all processors share. */
  private final class Shared<T> implements AutoCloseable {
    private final Function<UnitHistory, T> work;
    private final InOrder<T> results;
    private int unitsAtOnce = UNITS_AT_ONCE;

    Shared(Function<UnitHistory, T> work, Consumer<T> take) {
      this.work = work;
      this.results = new InOrder<>(take);
    }

    void give(List<Equipment> units) {
      int from = 0;
      while (from < units.size()) {
        int to = Math.min(units.size(), from + unitsAtOnce);
        Histories histories = histories(units.subList(from, to));
        int visits = Math.max(1, histories.visitCount());
        unitsAtOnce = Math.max(1, Math.min(UNITS_AT_ONCE, VISITS_AT_ONCE * (to - from) / visits));
        results.give(() -> histories.all().map(work).toList());
        from = to;
      }
      forget();
    }

    void finish() {
      results.finish();
      forget();
    }

    @Override
    public void close() {
      results.close();
    }
  }

  /** Writes what the taker has done so far, then lets go of it. */
  private void forget() {
    entities.flush();
    entities.clear();
  }

  private UnitHistory alone(Equipment unit) {
    return last.of(unit)
        .orElseGet(
            () -> {
              UnitHistory read = histories(List.of(unit)).history(unit);
              last.keep(unit, read);
              return read;
            });
  }

  private Histories histories(List<Equipment> units) {
    List<Long> ids = units.stream().map(Equipment::id).toList();
    Map<Long, List<VisitRow>> visits = new HashMap<>();
    stored.eachOf(ids, row -> visits.computeIfAbsent(row.unitId, id -> new ArrayList<>()).add(row));
    Map<Long, List<FaultRow>> faults = new HashMap<>();
    FAULTS.each(
        entities,
        ids,
        row ->
            faults.computeIfAbsent(row.getLong(1), id -> new ArrayList<>()).add(FaultRow.of(row)));
    return new Histories(units, visits, faults);
  }

  /** Rows of units; what they say is made out when it is asked for. */
  private record Histories(
      List<Equipment> units, Map<Long, List<VisitRow>> visits, Map<Long, List<FaultRow>> faults) {

    int visitCount() {
      return visits.values().stream().mapToInt(List::size).sum();
    }

    Stream<UnitHistory> all() {
      return units.stream().map(this::history);
    }

    private UnitHistory history(Equipment of) {
      return new UnitHistory(
          of.site(),
          of.unit().read(),
          visits.getOrDefault(of.id(), List.of()).stream().map(VisitRow::read).toList(),
          faults.getOrDefault(of.id(), List.of()).stream().map(FaultRow::read).toList());
    }
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
