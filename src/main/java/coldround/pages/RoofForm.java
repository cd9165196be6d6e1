package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;

/**
 * What was typed into the roof calculator, and in which measures it is meant.
 *
 * @param refrigerant designation in any usual spelling
 * @param ambient air entering the condenser
 * @param split clean split of the unit, or what is usual
 * @param head head pressure that was read; may be empty
 * @param elevation height of the place; empty for sea level
 */
public record RoofForm(
    String refrigerant,
    String ambient,
    String split,
    String head,
    String elevation,
    MeasureSystem system) {

  public RoofForm {
    refrigerant = orEmpty(refrigerant);
    ambient = orEmpty(ambient);
    split = orEmpty(split);
    head = orEmpty(head);
    elevation = orEmpty(elevation);
  }

  private static String orEmpty(String text) {
    return text == null ? "" : text.strip();
  }

  /** True when nothing was asked yet. */
  public boolean untouched() {
    return refrigerant.isEmpty() && ambient.isEmpty() && head.isEmpty();
  }

  /** The same with the usual split where none was typed. */
  public RoofForm withUsualSplit(double splitK) {
    Measure measure = splitMeasure();
    String usual = Figures.decimal(measure.fromBase(splitK), 0);
    return split.isEmpty()
        ? new RoofForm(refrigerant, ambient, usual, head, elevation, system)
        : this;
  }

  public boolean si() {
    return system == MeasureSystem.SI;
  }

  public Measure temperatureMeasure() {
    return system.measureFor(Measure.DEG_C);
  }

  public Measure splitMeasure() {
    return system.measureFor(Measure.DELTA_K);
  }

  public Measure pressureMeasure() {
    return system.measureFor(Measure.KPAG);
  }

  public Measure elevationMeasure() {
    return si() ? Measure.METRE : Measure.FOOT;
  }
}
