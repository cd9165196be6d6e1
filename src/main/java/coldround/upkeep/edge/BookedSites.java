package coldround.upkeep.edge;

import coldround.access.SiteGrants;
import coldround.fleet.Today;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Whom tasks are booked for goes to their sites, whatever plan the booking came from. */
@ApplicationScoped
class BookedSites implements SiteGrants {

  private final EntityManager entities;
  private final Today today;
  private final int daysAfter;

  @Inject
  BookedSites(
      EntityManager entities,
      Today today,
      @ConfigProperty(name = "coldround.access.days-after-round") int daysAfter) {
    this.entities = entities;
    this.today = today;
    this.daysAfter = daysAfter;
  }

  @Override
  @Transactional
  public boolean grants(String technician, String customer, String site) {
    return entities
            .createQuery(
                "select count(*) from BookingRow b join TaskPlaceRow f on f.unitId = b.unitId"
                    + " where b.technician = :technician and b.starts >= :since"
                    + " and f.customer = :customer and f.site = :site",
                Long.class)
            .setParameter("technician", technician)
            .setParameter("since", since())
            .setParameter("customer", customer)
            .setParameter("site", site)
            .getSingleResult()
        > 0;
  }

  private Instant since() {
    return today.usually().minusDays(daysAfter).atStartOfDay(today.usual()).toInstant();
  }
}
