package coldround.refrigerant;

import coldround.table.RuleTables;
import java.util.List;

/** All rule tables about refrigerants, each read once. */
public record RefrigerantRules(
    Refrigerants refrigerants,
    UnitCategories categories,
    RefrigerantLaw law,
    LeakRates leakRates,
    LeakDuties leakDuties,
    LeakInspections leakInspections) {

  /** Reads them; problems are left with the tables. */
  public static RefrigerantRules load(RuleTables tables) {
    UnitCategories categories = UnitCategories.load(tables);
    Jurisdictions jurisdictions = Jurisdictions.load(tables);
    List<LeakRule> leaks = LeakRule.read(tables);
    return new RefrigerantRules(
        Refrigerants.load(tables),
        categories,
        RefrigerantLaw.load(tables, jurisdictions, categories),
        LeakRates.of(tables, leaks),
        new LeakDuties(leaks, jurisdictions),
        new LeakInspections(InspectionRule.read(tables), jurisdictions));
  }
}
