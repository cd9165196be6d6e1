package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.scoring.FactorScore;
import java.util.List;

/**
 * What one factor takes, and why.
 *
 * @param between least and most it could take, empty when the evidence leaves nothing open
 */
public record FactorView(
    String code,
    String name,
    String lost,
    String weight,
    String between,
    boolean known,
    List<Told> reasons) {
  public FactorView {
    reasons = List.copyOf(reasons);
  }

  public static FactorView of(FactorScore factor, MeasureSystem system) {
    boolean open = factor.most() - factor.least() >= 0.1;
    return new FactorView(
        factor.factor(),
        Words.title(factor.factor()),
        Figures.points(factor.lost()),
        Figures.points(factor.weight()),
        open ? Figures.points(factor.least()) + " to " + Figures.points(factor.most()) : "",
        factor.known(),
        factor.reasons().stream().map(reason -> Told.of(reason, system)).toList());
  }
}
