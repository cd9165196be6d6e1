package coldround.fleet.edge;

import coldround.fleet.Customer;
import coldround.fleet.Fault;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.TravelTime;
import coldround.fleet.UnitHistory;
import coldround.fleet.UnitIds;
import coldround.fleet.Visit;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** Reads the fleet in chunks of units by ascending id, so that memory does not grow with it. */
@ApplicationScoped
class FleetReads implements Fleet {

  private static final int CHUNK = 500;
  private static final String UNITS =
      "from UnitRow u join fetch u.site s join fetch s.customer c where u.id > :after";

  private final EntityManager entities;

  @Inject
  FleetReads(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional
  public Optional<UnitHistory> history(String unitId) {
    OptionalLong id = UnitIds.number(unitId);
    if (id.isEmpty()) {
      return Optional.empty();
    }
    UnitRow unit = entities.find(UnitRow.class, id.getAsLong());
    return unit == null ? Optional.empty() : Optional.of(histories(List.of(unit)).get(0));
  }

  @Override
  @Transactional
  public void eachHistory(FleetFilter filter, Consumer<UnitHistory> each) {
    Map<String, Object> parameters = new HashMap<>();
    String query = UNITS + conditions(filter, parameters) + " order by u.id";
    long after = 0;
    List<UnitRow> units;
    do {
      units = chunk(query, parameters, after);
      histories(units).forEach(each);
      after = units.isEmpty() ? after : units.get(units.size() - 1).id;
      forget();
    } while (units.size() == CHUNK);
  }

  @Override
  @Transactional
  public void eachHistory(Collection<String> unitIds, Consumer<UnitHistory> each) {
    List<Long> ids =
        unitIds.stream()
            .map(UnitIds::number)
            .filter(OptionalLong::isPresent)
            .map(OptionalLong::getAsLong)
            .sorted()
            .toList();
    String query = UNITS + " and u.id in :ids order by u.id";
    for (int from = 0; from < ids.size(); from += CHUNK) {
      List<Long> some = ids.subList(from, Math.min(ids.size(), from + CHUNK));
      histories(chunk(query, Map.of("ids", some), 0)).forEach(each);
      forget();
    }
  }

  /** Writes what the caller has done with a chunk, then lets go of it. */
  private void forget() {
    entities.flush();
    entities.clear();
  }

  private static String conditions(FleetFilter filter, Map<String, Object> parameters) {
    OptionalLong id = UnitIds.number(filter.unit());
    Object unit = filter.unit().isEmpty() ? "" : (Object) id.orElse(-1);
    return condition("c.code", "customer", filter.customer(), parameters)
        + condition("s.code", "site", filter.site(), parameters)
        + condition("u.id", "unit", unit, parameters)
        + condition("u.kind", "kind", filter.kind(), parameters)
        + condition("u.refrigerant", "refrigerant", filter.refrigerant(), parameters);
  }

  private static String condition(
      String path, String name, Object value, Map<String, Object> parameters) {
    if (value.equals("")) {
      return "";
    }
    parameters.put(name, value);
    return " and " + path + " = :" + name;
  }

  private List<UnitRow> chunk(String query, Map<String, Object> parameters, long after) {
    TypedQuery<UnitRow> typed = entities.createQuery(query, UnitRow.class);
    parameters.forEach(typed::setParameter);
    return typed.setParameter("after", after).setMaxResults(CHUNK).getResultList();
  }

  private List<UnitHistory> histories(List<UnitRow> units) {
    if (units.isEmpty()) {
      return List.of();
    }
    List<Long> ids = units.stream().map(unit -> unit.id).toList();
    Map<Long, List<Visit>> visits = visits(ids);
    Map<Long, List<Fault>> faults = faults(ids);
    return units.stream()
        .map(
            unit ->
                new UnitHistory(
                    unit.site.read(),
                    unit.read(),
                    visits.getOrDefault(unit.id, List.of()),
                    faults.getOrDefault(unit.id, List.of())))
        .toList();
  }

  // columns and not entities: nothing is kept of what is only read, which halves the time
  private Map<Long, List<Visit>> visits(List<Long> ids) {
    Map<Long, List<Visit>> visits = new HashMap<>();
    of(
            ids,
            "select unitId, number, visited, technician, purpose, readings, findings, work, faults,"
                + " note from VisitRow where ",
            Object[].class)
        .getResultList()
        .forEach(
            row ->
                visits
                    .computeIfAbsent((Long) row[0], id -> new ArrayList<>())
                    .add(VisitRow.read(row)));
    return visits;
  }

  /** Neighbours are asked for as a range, which costs a database far less than a list of ids. */
  private <T> TypedQuery<T> of(List<Long> ascendingIds, String query, Class<T> type) {
    long first = ascendingIds.get(0);
    long last = ascendingIds.get(ascendingIds.size() - 1);
    return last - first < 2L * ascendingIds.size()
        ? entities
            .createQuery(query + "unitId between :first and :last", type)
            .setParameter("first", first)
            .setParameter("last", last)
        : entities.createQuery(query + "unitId in :ids", type).setParameter("ids", ascendingIds);
  }

  private Map<Long, List<Fault>> faults(List<Long> ids) {
    Map<Long, List<Fault>> faults = new HashMap<>();
    of(ids, "from FaultRow where ", FaultRow.class)
        .setHint("org.hibernate.readOnly", true)
        .getResultList()
        .forEach(
            row -> faults.computeIfAbsent(row.unitId, id -> new ArrayList<>()).add(row.read()));
    return faults;
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
