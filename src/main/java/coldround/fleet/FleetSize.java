package coldround.fleet;

/** How many units there are, without reading them. */
public interface FleetSize {

  /** Units of a customer, or of all for an empty code; retired ones count. */
  long units(String customer);
}
