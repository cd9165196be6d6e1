package coldround.refrigerant;

import coldround.table.RuleTables;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The refrigerants of the rule tables with their saturation curves. */
public final class Refrigerants {

  private final Map<String, Refrigerant> byDesignation = new LinkedHashMap<>();
  private final Map<String, SaturationCurve> curves;
  private final RefrigerantNames names;

  private Refrigerants(
      List<Refrigerant> refrigerants, Map<String, SaturationCurve> curves, RefrigerantNames names) {
    for (Refrigerant refrigerant : refrigerants) {
      SaturationCurve curve = curves.get(refrigerant.designation());
      String quality = curve == null ? "none" : curve.quality();
      byDesignation.put(refrigerant.designation(), refrigerant.withCurve(quality));
    }
    this.curves = curves;
    this.names = names;
  }

  /** Reads refrigerants, their names and their curves; problems are left with the tables. */
  public static Refrigerants load(RuleTables tables) {
    List<Refrigerant> refrigerants = RefrigerantTable.read(tables);
    return new Refrigerants(
        refrigerants,
        SaturationTable.read(tables, refrigerants),
        RefrigerantNames.load(tables, refrigerants));
  }

  /** The refrigerant meant by a designation or name in any usual spelling. */
  public Optional<Refrigerant> find(String designation) {
    return names.designation(designation).map(byDesignation::get);
  }

  /**
   * Designation by every known name, written as the capitals and digits of the name without the
   * prefix of its family: "404A".
   */
  public Map<String, String> names() {
    return names.byKey();
  }

  /** All of them, in the order of the table. */
  public List<Refrigerant> all() {
    return List.copyOf(byDesignation.values());
  }

  /** Empty for an unknown refrigerant and for one without a trustworthy curve. */
  public Optional<SaturationCurve> curve(String designation) {
    return names.designation(designation).map(curves::get);
  }
}
