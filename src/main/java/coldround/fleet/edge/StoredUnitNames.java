package coldround.fleet.edge;

import coldround.fleet.Today;
import coldround.fleet.UnitIds;
import coldround.fleet.UnitNames;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;

/** Reads names alone, customer by customer, in chunks. */
@ApplicationScoped
class StoredUnitNames implements UnitNames {

  private static final int CHUNK = 1000;

  private final EntityManager entities;
  private final Today today;

  @Inject
  StoredUnitNames(EntityManager entities, Today today) {
    this.entities = entities;
    this.today = today;
  }

  @Override
  @Transactional
  public void inUse(Collection<String> customers, Consumer<UnitName> each) {
    for (String customer : customers) {
      UnitName last = new UnitName("", customer, "", "");
      List<Object[]> chunk;
      do {
        chunk = chunk(last);
        for (Object[] row : chunk) {
          last =
              new UnitName(UnitIds.text((Long) row[0]), customer, (String) row[1], (String) row[2]);
          each.accept(last);
        }
      } while (chunk.size() == CHUNK);
    }
  }

  private List<Object[]> chunk(UnitName after) {
    return entities
        .createQuery(
            "select u.id, s.code, u.tag from UnitRow u join u.site s join s.customer c"
                + " where c.code = :customer and (u.retired is null or u.retired > :today)"
                + " and (s.code > :site or s.code = :site and u.tag > :tag)"
                + " order by s.code, u.tag",
            Object[].class)
        .setParameter("customer", after.customer())
        .setParameter("today", today.usually())
        .setParameter("site", after.site())
        .setParameter("tag", after.tag())
        .setMaxResults(CHUNK)
        .getResultList();
  }
}
