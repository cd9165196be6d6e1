package coldround.field.edge;

import coldround.fleet.UnitIds;
import coldround.fleet.UnitLocks;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;

/**
 * Lets what comes from outside for one unit in one after the other, so that each sees the visits
 * and tasks that the one before it left.
 */
@ApplicationScoped
class UnitLock {

  private final UnitLocks units;

  @Inject
  UnitLock(UnitLocks units) {
    this.units = units;
  }

  /** Until the end of the transaction. */
  void lock(String unitId) {
    if (UnitIds.number(unitId).isEmpty()) {
      throw unknown(unitId);
    }
    units.hold(List.of(unitId));
  }

  static Problem unknown(String unitId) {
    return Problem.notFound("unit " + unitId);
  }
}
