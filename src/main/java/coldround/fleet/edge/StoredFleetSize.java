package coldround.fleet.edge;

import coldround.fleet.FleetSize;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

@ApplicationScoped
class StoredFleetSize implements FleetSize {

  private final EntityManager entities;

  @Inject
  StoredFleetSize(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional
  public long units(String customer) {
    return entities
        .createQuery(
            "select count(u) from UnitRow u where :customer = '' or u.site.customer.code ="
                + " :customer",
            Long.class)
        .setParameter("customer", customer)
        .getSingleResult();
  }
}
