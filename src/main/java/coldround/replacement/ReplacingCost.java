package coldround.replacement;

import coldround.reason.Source;

/**
 * What replacing a unit costs today.
 *
 * @param price of the new unit, installed, without the site's shutdown
 * @param own true when the price is that of the equipment list for this very unit
 * @param size of the unit against one usual of its kind, which a price by kind is moved by; 1 when
 *     it is not known, or not needed
 * @param disposal of the old unit
 * @param recovery of its refrigerant
 * @param shutdown crane, access and shutdown, shared by all units replaced at the site in that year
 * @param surcharge more when a dead unit has to be replaced at once
 * @param source row or column that gave the price
 */
public record ReplacingCost(
    double price,
    boolean own,
    double size,
    double disposal,
    double recovery,
    double shutdown,
    double surcharge,
    Source source) {

  /** All but the shutdown, which is the site's. */
  public double unitOnly() {
    return price + disposal + recovery;
  }

  public double total() {
    return unitOnly() + shutdown;
  }

  ReplacingCost times(double factor) {
    return new ReplacingCost(
        price * factor, own, size, disposal, recovery, shutdown, surcharge * factor, source);
  }
}
