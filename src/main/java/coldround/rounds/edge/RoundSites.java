package coldround.rounds.edge;

import coldround.access.SiteGrants;
import coldround.fleet.Today;
import coldround.fleet.UnitNames.UnitName;
import coldround.fleet.UnitOwners;
import coldround.rounds.RoundPlan;
import coldround.rounds.Turns;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Which sites the rounds that were told lead whom to. */
@ApplicationScoped
class RoundSites implements SiteGrants, Turns {

  private final EntityManager entities;
  private final UnitOwners owners;
  private final Today today;
  private final int daysAfter;

  @Inject
  RoundSites(
      EntityManager entities,
      UnitOwners owners,
      Today today,
      @ConfigProperty(name = "coldround.access.days-after-round") int daysAfter) {
    this.entities = entities;
    this.owners = owners;
    this.today = today;
    this.daysAfter = daysAfter;
  }

  /** Puts the sites of a plan in the place of those it had. */
  @Transactional(Transactional.TxType.MANDATORY)
  void put(String planId, RoundPlan plan) {
    Map<RoundSiteRow.Key, LocalDate> last = new HashMap<>();
    for (RoundPlan.Round round : plan.rounds()) {
      for (RoundPlan.Stop stop : round.stops()) {
        Optional<UnitName> unit = owners.of(stop.call().jobs().get(0).unit());
        unit.ifPresent(
            its ->
                last.merge(
                    new RoundSiteRow.Key(planId, round.technician(), its.customer(), its.site()),
                    round.day(),
                    (one, other) -> one.isAfter(other) ? one : other));
      }
    }
    entities
        .createQuery("delete from RoundSiteRow where planId = :id")
        .setParameter("id", planId)
        .executeUpdate();
    last.forEach((key, day) -> entities.persist(RoundSiteRow.of(key, day)));
  }

  @Override
  @Transactional
  public boolean grants(String technician, String customer, String site) {
    return entities
            .createQuery(
                "select count(*) from RoundSiteRow where technician = :technician"
                    + " and customer = :customer and site = :site and lastDay >= :day",
                Long.class)
            .setParameter("technician", technician)
            .setParameter("customer", customer)
            .setParameter("site", site)
            .setParameter("day", today.usually().minusDays(daysAfter))
            .getSingleResult()
        > 0;
  }

  @Override
  @Transactional
  public boolean has(String planId, String technician) {
    return entities
            .createQuery(
                "select count(*) from RoundSiteRow where planId = :id and technician = :technician",
                Long.class)
            .setParameter("id", planId)
            .setParameter("technician", technician)
            .getSingleResult()
        > 0;
  }
}
