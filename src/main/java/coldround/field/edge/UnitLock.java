package coldround.field.edge;

import coldround.fleet.UnitIds;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;

/**
 * Lets what comes from outside for one unit in one after the other, so that each sees the visits
 * and tasks that the one before it left.
 */
@ApplicationScoped
class UnitLock {

  private final EntityManager entities;

  @Inject
  UnitLock(EntityManager entities) {
    this.entities = entities;
  }

  /** Until the end of the transaction. */
  void lock(String unitId) {
    entities
        .createNativeQuery("select id from unit where id = :id for update")
        .setParameter("id", UnitIds.number(unitId).orElseThrow(() -> unknown(unitId)))
        .getResultList();
  }

  static Problem unknown(String unitId) {
    return Problem.notFound("unit " + unitId);
  }
}
