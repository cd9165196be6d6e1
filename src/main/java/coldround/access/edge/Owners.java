package coldround.access.edge;

import coldround.fleet.UnitOwners;
import coldround.http.Caller;
import coldround.replacement.PlanOwners;
import coldround.rounds.Turns;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;

/** Whether what an id names is there for the caller. */
@ApplicationScoped
class Owners {

  private final Caller caller;
  private final UnitOwners units;
  private final PlanOwners plans;
  private final Turns turns;

  @Inject
  Owners(Caller caller, UnitOwners units, PlanOwners plans, Turns turns) {
    this.caller = caller;
    this.units = units;
    this.plans = plans;
    this.turns = turns;
  }

  boolean unit(String id) {
    return units.of(id).map(unit -> caller.reaches(unit.customer(), unit.site())).orElse(false);
  }

  boolean rounds(String id) {
    return caller.isTechnician() && turns.has(id, caller.technician());
  }

  boolean plan(String id) {
    return caller.isCustomer() && plans.isFor(id, caller.customer());
  }
}
