package coldround.scoring;

import coldround.refrigerant.LeakDuties;
import coldround.refrigerant.LeakRates;
import coldround.refrigerant.RefrigerantLaw;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.UnitCategories;
import coldround.table.RuleTables;

/** What scoring needs of the refrigerant tables. */
public record RefrigerantRules(
    Refrigerants refrigerants,
    RefrigerantLaw law,
    UnitCategories categories,
    LeakRates leakRates,
    LeakDuties leakDuties,
    LeakMethods leakMethods) {

  /** Reads them; problems are left with the tables. */
  public static RefrigerantRules load(RuleTables tables) {
    return new RefrigerantRules(
        Refrigerants.load(tables),
        RefrigerantLaw.load(tables),
        UnitCategories.load(tables),
        LeakRates.load(tables),
        LeakDuties.load(tables),
        LeakMethods.load(tables));
  }
}
