package coldround.replacement.edge;

import coldround.replacement.ReplacementPlan;
import coldround.replacement.UnitOutlook;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** How a plan calls the sites: by name, and where there is room by code too. */
final class PlaceWords {

  private final Map<String, String> customers;
  private final boolean several;

  /**
   * @param customers names by code
   */
  PlaceWords(ReplacementPlan plan, Map<String, String> customers) {
    this.customers = customers;
    this.several =
        plan.decisions().stream().map(each -> each.outlook().customer()).distinct().count() > 1;
  }

  /** "Elm Street: CU-1; Mill Lane: RIF-1, WIC-1". */
  String together(List<UnitOutlook> units) {
    Map<String, List<String>> bySite = new LinkedHashMap<>();
    for (UnitOutlook unit : units) {
      bySite.computeIfAbsent(name(unit), site -> new ArrayList<>()).add(unit.tag());
    }
    return bySite.entrySet().stream()
        .map(site -> site.getKey() + ": " + String.join(", ", site.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static String name(UnitOutlook unit) {
    String name = unit.assessment().history().site().name();
    return name.isBlank() ? unit.site() : name;
  }

  /** "Elm Street (ELM)", of one of several customers "Elm Street (ELM), Lindgren Markets". */
  String of(UnitOutlook outlook) {
    String name = name(outlook);
    String site = name.equals(outlook.site()) ? name : name + " (" + outlook.site() + ")";
    return several
        ? site + ", " + customers.getOrDefault(outlook.customer(), outlook.customer())
        : site;
  }
}
