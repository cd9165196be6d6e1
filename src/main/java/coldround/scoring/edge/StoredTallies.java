package coldround.scoring.edge;

import coldround.fleet.UnitIds;
import coldround.scoring.FaultTallies;
import coldround.scoring.statistics.FaultTally;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;

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
    for (FaultRecordOf each : records) {
      FaultTallyRow row = new FaultTallyRow();
      row.unitId = UnitIds.number(each.unitId()).orElseThrow();
      row.faultClass = each.record().faultClass();
      row.firstSeen = each.record().firstSeen();
      row.faults = each.record().events().size();
      entities.merge(row);
    }
    entities.flush();
  }

  @Override
  @Transactional
  public void remove(Collection<String> unitIds) {
    if (unitIds.isEmpty()) {
      return;
    }
    List<Long> ids = unitIds.stream().map(UnitIds::number).map(OptionalLong::orElseThrow).toList();
    entities
        .createQuery("delete from FaultTallyRow where unitId in :ids")
        .setParameter("ids", ids)
        .executeUpdate();
  }

  /** Units that came on record on one day with as many faults add the same: few groups. */
  @Override
  @Transactional
  public Map<String, FaultTally> sums(LocalDate day) {
    Map<String, FaultTally> sums = new TreeMap<>();
    entities
        .createQuery(
            "select faultClass, firstSeen, faults, count(*) from FaultTallyRow"
                + " group by faultClass, firstSeen, faults",
            Object[].class)
        .getResultList()
        .forEach(
            group -> {
              long days = Math.max(0, ChronoUnit.DAYS.between((LocalDate) group[1], day));
              FaultTally tally = FaultTally.of((Integer) group[2], days).times((Long) group[3]);
              sums.merge((String) group[0], tally, FaultTally::plus);
            });
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
