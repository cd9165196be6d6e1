package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.scoring.RoofCheck;
import coldround.scoring.RoofVerdict;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * All that the roof calculator needs where there is no connection: the same curves, limits and
 * words as the service has.
 *
 * @param names designation by name, as {@link Refrigerants#names()}
 * @param limits in K and °C
 * @param templates sentences by kind
 */
public record RoofBook(
    List<Curve> curves,
    Map<String, String> names,
    Map<String, Double> limits,
    Map<String, String> templates,
    List<Said> verdicts) {

  /**
   * The midpoint line of one refrigerant.
   *
   * @param c temperatures of its nodes in °C
   * @param kpa absolute pressures there
   * @param cautions what to beware of with it
   */
  public record Curve(
      String designation, double[] c, double[] kpa, String source, List<String> cautions) {}

  /** What is said of one verdict. */
  public record Said(String code, String said, List<Check> next) {}

  /** What to look at. */
  public record Check(String text, String source) {}

  public static RoofBook of(Refrigerants refrigerants, RoofCheck check) {
    List<Curve> curves =
        refrigerants.all().stream()
            .flatMap(gas -> refrigerants.curve(gas.designation()).stream())
            .map(curve -> curve(refrigerants, check, curve))
            .toList();
    return new RoofBook(
        curves,
        refrigerants.names(),
        check.limits(),
        RoofCheck.sentences(),
        Arrays.stream(RoofVerdict.values()).map(verdict -> said(check, verdict)).toList());
  }

  private static Curve curve(Refrigerants refrigerants, RoofCheck check, SaturationCurve curve) {
    return new Curve(
        curve.designation(),
        curve.midpointNodesC(),
        curve.midpointNodesKpa(),
        curve.source().toString(),
        check.cautions(refrigerants.find(curve.designation())));
  }

  private static Said said(RoofCheck check, RoofVerdict verdict) {
    List<Check> next =
        check.next(verdict).stream()
            .map(reason -> Told.of(reason, MeasureSystem.US))
            .map(told -> new Check(told.text(), told.source()))
            .toList();
    return new Said(verdict.code(), RoofView.said(verdict), next);
  }
}
