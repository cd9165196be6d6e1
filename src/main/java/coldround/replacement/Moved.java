package coldround.replacement;

/**
 * Factors on the costs of the tables, to see what follows when they are other than assumed.
 *
 * @param price on what new units cost
 * @param faults on what faults cost, by their number or their price
 * @param refrigerant on what lost refrigerant costs
 * @param electricity on what avoidable electricity costs
 */
public record Moved(double price, double faults, double refrigerant, double electricity) {

  /** The tables as they are. */
  public static final Moved NOT = new Moved(1, 1, 1, 1);

  /** Least and greatest factor. */
  public static final double LEAST = 0.25;

  public static final double MOST = 4;

  public Moved {
    for (double factor : new double[] {price, faults, refrigerant, electricity}) {
      if (!(factor >= LEAST && factor <= MOST)) {
        throw new IllegalArgumentException("a factor is " + LEAST + " to " + MOST);
      }
    }
  }

  /** The unit with its costs moved. */
  public UnitOutlook apply(UnitOutlook unit) {
    return equals(NOT) ? unit : unit.times(price, faults, refrigerant, electricity);
  }
}
