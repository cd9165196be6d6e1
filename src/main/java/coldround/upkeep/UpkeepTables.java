package coldround.upkeep;

import coldround.refrigerant.LeakInspections;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.UnitCategories;
import coldround.scoring.Cautions;
import coldround.scoring.KindRule;
import coldround.scoring.Limits;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** All rule tables that upkeep reads, checked against each other. */
record UpkeepTables(
    TaskCatalogue catalogue,
    Intervals intervals,
    Triggers triggers,
    TaskEffects effects,
    UpkeepLimits limits,
    Limits scoringLimits,
    Costs costs,
    CyclePower cyclePower,
    EnergyUse energy,
    BoxLimits boxes,
    CutOutLimits cutOuts,
    SurveyNeeds needs,
    ModeShares modes,
    BindingReasons binding,
    LockoutChances lockouts,
    Map<String, KindRule> kinds,
    Cautions cautions,
    Refrigerants refrigerants,
    LeakInspections inspections,
    UnitCategories categories) {

  /** Reads them; problems are left with the tables. */
  static UpkeepTables load(
      RuleTables tables,
      ScoringRules rules,
      Refrigerants refrigerants,
      LeakInspections inspections,
      UnitCategories categories) {
    Map<String, KindRule> kinds = new LinkedHashMap<>();
    rules.kinds().all().forEach(kind -> kinds.put(kind.kind(), kind));
    Set<String> names = kinds.keySet();
    TaskCatalogue catalogue = TaskCatalogue.load(tables, names);
    UpkeepLimits limits = UpkeepLimits.load(tables);
    return new UpkeepTables(
        catalogue,
        Intervals.load(tables, catalogue, names),
        Triggers.load(tables, catalogue),
        TaskEffects.load(tables, catalogue),
        limits,
        rules.limits(),
        Costs.load(tables),
        CyclePower.load(tables),
        EnergyUse.load(tables),
        BoxLimits.load(tables, names),
        CutOutLimits.load(tables),
        SurveyNeeds.load(tables),
        ModeShares.load(tables, limits.value(UpkeepLimit.MODE_WEIGHT)),
        BindingReasons.load(tables),
        LockoutChances.load(tables),
        kinds,
        rules.cautions(),
        refrigerants,
        inspections,
        categories);
  }
}
