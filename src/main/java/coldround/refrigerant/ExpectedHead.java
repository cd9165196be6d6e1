package coldround.refrigerant;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The head pressure to expect where the condenser gives its heat to air: p_sat(ambient + split), by
 * the midpoint of bubble and dew. The split is the condensing temperature less the temperature of
 * the air entering the condenser.
 *
 * @param condensingC ambient plus split
 * @param pressureKpa absolute
 * @param curve which curve turned temperature into pressure: midpoint
 */
public record ExpectedHead(
    String designation,
    double ambientC,
    double splitK,
    double condensingC,
    double pressureKpa,
    String curve,
    Reason reason) {

  private static final String TEMPLATE =
      "{refrigerant} condensing {split} above {ambient} ambient is at {condensing}, which by the"
          + " {curve} of its saturation curve is {pressure}";

  /**
   * @param ambientC air entering the condenser
   * @param splitK condensing temperature less ambient
   * @throws OutsideTable when the condensing temperature is not in the table
   */
  public static ExpectedHead of(SaturationCurve curve, double ambientC, double splitK) {
    double condensingC = ambientC + splitK;
    double kpa = curve.midpointPressureKpa(condensingC);
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("refrigerant", curve.designation());
    facts.put("ambient", new Quantity(ambientC, Measure.DEG_C));
    facts.put("split", new Quantity(splitK, Measure.DELTA_K));
    facts.put("condensing", new Quantity(condensingC, Measure.DEG_C));
    facts.put("curve", "midpoint");
    facts.put("pressure", new Quantity(kpa, Measure.KPA));
    Reason reason = new Reason("expected-head", TEMPLATE, facts, curve.source());
    return new ExpectedHead(
        curve.designation(), ambientC, splitK, condensingC, kpa, "midpoint", reason);
  }

  /**
   * The split that a measured head pressure means.
   *
   * @throws OutsideTable when the pressure is not in the table
   */
  public static double splitK(SaturationCurve curve, double headKpa, double ambientC) {
    return curve.midpointTemperatureC(headKpa) - ambientC;
  }
}
