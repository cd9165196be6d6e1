package coldround.fleet;

/**
 * Which units are asked for; an empty field asks for all.
 *
 * @param unit id of the unit
 */
public record FleetFilter(
    String customer, String site, String unit, String kind, String refrigerant) {

  public static final FleetFilter ALL = new FleetFilter("", "", "", "", "");

  public FleetFilter {
    customer = customer == null ? "" : customer;
    site = site == null ? "" : site;
    unit = unit == null ? "" : unit;
    kind = kind == null ? "" : kind;
    refrigerant = refrigerant == null ? "" : refrigerant;
  }
}
