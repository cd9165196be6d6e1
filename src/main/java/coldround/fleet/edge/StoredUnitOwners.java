package coldround.fleet.edge;

import coldround.fleet.UnitIds;
import coldround.fleet.UnitNames.UnitName;
import coldround.fleet.UnitOwners;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Optional;
import java.util.OptionalLong;

/** Reads the names alone. */
@ApplicationScoped
class StoredUnitOwners implements UnitOwners {

  private final EntityManager entities;

  @Inject
  StoredUnitOwners(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional
  public Optional<UnitName> of(String unitId) {
    OptionalLong id = UnitIds.number(unitId);
    if (id.isEmpty()) {
      return Optional.empty();
    }
    return entities
        .createQuery(
            "select c.code, s.code, u.tag from UnitRow u join u.site s join s.customer c"
                + " where u.id = :id",
            Object[].class)
        .setParameter("id", id.getAsLong())
        .getResultStream()
        .findFirst()
        .map(row -> new UnitName(unitId, (String) row[0], (String) row[1], (String) row[2]));
  }
}
