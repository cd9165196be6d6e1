package coldround.scoring.edge;

import coldround.fleet.UnitIds;
import coldround.scoring.FaultRecord;
import coldround.scoring.FaultTallies;
import coldround.scoring.statistics.FaultTally;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Fault records of units as two numbers each, and their sums. */
@ApplicationScoped
class StoredTallies implements FaultTallies {

  private final EntityManager entities;

  @Inject
  StoredTallies(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional
  public void put(Collection<FaultRecordOf> records) {
    FaultTallyRow.TABLE.put(entities, records.stream().map(StoredTallies::row).toList());
  }

  private static FaultTallyRow row(FaultRecordOf each) {
    FaultTallyRow row = new FaultTallyRow();
    row.unitId = UnitIds.number(each.unitId()).orElseThrow();
    row.faultClass = each.record().faultClass();
    row.firstSeen = each.record().firstSeen();
    row.faults = each.record().events().size();
    row.faultDays = days(each.record());
    row.retired = each.retired();
    return row;
  }

  private static String days(FaultRecord record) {
    return record.events().stream()
        .map(event -> event.date().toString())
        .sorted()
        .collect(Collectors.joining(";"));
  }

  @Override
  @Transactional
  public void remove(Collection<String> unitIds) {
    if (unitIds.isEmpty()) {
      return;
    }
    entities
        .createQuery("delete from FaultTallyRow where unitId in :ids")
        .setParameter("ids", UnitIds.numbers(unitIds))
        .executeUpdate();
  }

  @Override
  @Transactional
  public Map<String, FaultTally> sums(LocalDate day) {
    Map<String, FaultTally> sums = new TreeMap<>();
    entities
        .createQuery("from FaultTallyRow", FaultTallyRow.class)
        .setHint("org.hibernate.readOnly", true)
        .getResultStream()
        .forEach(row -> sums.merge(row.faultClass, row.on(day), FaultTally::plus));
    return sums;
  }

  @Override
  @Transactional
  public Map<String, FaultTally> inForce() {
    Map<String, FaultTally> sums = new TreeMap<>();
    entities
        .createQuery("from FaultPriorRow", FaultPriorRow.class)
        .getResultList()
        .forEach(row -> sums.put(row.faultClass, row.read()));
    return sums;
  }

  @Override
  @Transactional
  public void putInForce(Map<String, FaultTally> sums) {
    entities.createQuery("delete from FaultPriorRow").executeUpdate();
    entities.clear();
    sums.forEach((faultClass, tally) -> entities.persist(FaultPriorRow.of(faultClass, tally)));
    entities.flush();
  }
}
