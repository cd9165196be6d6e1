package coldround.refrigerant;

/** A temperature or pressure that the saturation table of the refrigerant does not cover. */
public final class OutsideTable extends IllegalArgumentException {

  private final String designation;
  private final double lowest;
  private final double highest;

  OutsideTable(String designation, double lowest, double highest, String message) {
    super(message);
    this.designation = designation;
    this.lowest = lowest;
    this.highest = highest;
  }

  public String designation() {
    return designation;
  }

  /** Lowest value that is covered: °C or kPa absolute, as asked. */
  public double lowest() {
    return lowest;
  }

  /** Highest value that is covered: °C or kPa absolute, as asked. */
  public double highest() {
    return highest;
  }
}
