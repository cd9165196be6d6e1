package coldround.replacement.edge;

import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.refrigerant.RefrigerantRules;
import coldround.replacement.Conflict;
import coldround.replacement.Economics;
import coldround.replacement.NoPrice;
import coldround.replacement.Outlooks;
import coldround.replacement.PlanOrder;
import coldround.replacement.Planner;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Terms;
import coldround.replacement.UnitOutlook;
import coldround.replacement.budget.SolverProgram;
import coldround.scoring.FaultPriors;
import coldround.scoring.Scoring;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes a plan from a request: loads, computes, or says why there is none. */
@ApplicationScoped
class PlanMaking {

  private static final int MOST_UNITS = 2000;
  private static final double SECONDS = 10;

  private final Fleet fleet;
  private final Scoring scoring;
  private final Economics economics;
  private final RefrigerantRules gases;
  private final Today today;
  private final OutlookMemory memory;

  @Inject
  PlanMaking(
      Fleet fleet,
      Scoring scoring,
      Economics economics,
      RefrigerantRules gases,
      Today today,
      OutlookMemory memory) {
    this.memory = memory;
    this.fleet = fleet;
    this.scoring = scoring;
    this.economics = economics;
    this.gases = gases;
    this.today = today;
  }

  ReplacementPlan make(PlanRequest asked) {
    return make(asked, SECONDS);
  }

  /**
   * @param seconds longest time to search for a plan
   */
  ReplacementPlan make(PlanRequest asked, double seconds) {
    List<String> customers = customers(asked);
    RequestReader reader = new RequestReader(asked, economics, today);
    Terms terms = reader.terms();
    List<UnitHistory> histories = histories(customers, terms);
    Map<String, String> tags = new LinkedHashMap<>();
    histories.forEach(history -> tags.put(history.unit().id(), history.unit().tag()));
    PlanOrder order = reader.order(terms, tags, seconds);
    List<UnitOutlook> outlooks =
        outlooks(histories, terms).stream().map(order.moved()::apply).toList();
    try {
      return new Planner(new SolverProgram(), economics).plan(outlooks, order);
    } catch (Conflict conflict) {
      List<FieldError> parts =
          conflict.parts().stream()
              .map(part -> new FieldError(part.subject(), null, part.message()))
              .toList();
      throw new Problem(
          422,
          "no-plan",
          "No plan keeps to all that was asked",
          "No plan: " + conflict.getMessage() + ".",
          parts);
    }
  }

  /** Names of customers for the report, by code. */
  Map<String, String> names() {
    Map<String, String> names = new LinkedHashMap<>();
    for (Customer customer : fleet.customers()) {
      names.put(customer.code(), customer.name().isEmpty() ? customer.code() : customer.name());
    }
    return names;
  }

  private List<String> customers(PlanRequest asked) {
    if (asked == null || asked.customers() == null || asked.customers().isEmpty()) {
      throw Problem.badField("/customers", "", "names one customer or several by their codes");
    }
    Map<String, String> known = names();
    List<FieldError> unknown =
        asked.customers().stream()
            .filter(code -> code == null || !known.containsKey(code))
            .map(
                code -> new FieldError("/customers", String.valueOf(code), "is no customer's code"))
            .toList();
    if (!unknown.isEmpty()) {
      throw Problem.badFields(unknown);
    }
    return asked.customers().stream().distinct().toList();
  }

  private List<UnitHistory> histories(List<String> customers, Terms terms) {
    List<UnitHistory> histories = new ArrayList<>();
    for (String customer : customers) {
      fleet.eachHistory(
          new FleetFilter(customer, "", "", "", ""),
          history -> {
            if (history.unit().inUse(terms.asOf())) {
              histories.add(history);
            }
          });
    }
    if (histories.isEmpty()) {
      throw Problem.unprocessable(
          "nothing-to-plan", "Nothing to plan", "These customers have no unit in use.");
    }
    if (histories.size() > MOST_UNITS) {
      throw Problem.badField(
          "/customers", "", "have more than " + MOST_UNITS + " units; plan for fewer at once");
    }
    return histories;
  }

  private List<UnitOutlook> outlooks(List<UnitHistory> histories, Terms terms) {
    Outlooks making = new Outlooks(economics, gases);
    FaultPriors priors = scoring.priors();
    List<UnitOutlook> outlooks = new ArrayList<>();
    List<FieldError> withoutPrice = new ArrayList<>();
    for (UnitHistory history : histories) {
      try {
        outlooks.add(
            memory.of(
                history,
                terms,
                priors,
                () -> making.of(scoring.assess(history, terms.asOf()), terms)));
      } catch (NoPrice none) {
        withoutPrice.add(new FieldError(none.unitId(), null, none.getMessage()));
      }
    }
    if (!withoutPrice.isEmpty()) {
      throw new Problem(
          422,
          "no-replacement-cost",
          "Some units have no replacement cost",
          "Give them a replacement_cost in the equipment list, or their kind an equipment row in"
              + " costs.csv.",
          withoutPrice);
    }
    return outlooks;
  }
}
