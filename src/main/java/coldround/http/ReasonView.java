package coldround.http;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.util.LinkedHashMap;
import java.util.Map;

/** A reason as answers carry it, in the units of the reader. */
public record ReasonView(String code, String text, Map<String, Object> inputs, String source) {

  public static ReasonView of(Reason reason, MeasureSystem system) {
    Map<String, Object> inputs = new LinkedHashMap<>();
    reason.inputs().forEach((name, fact) -> inputs.put(name, view(fact, system)));
    return new ReasonView(reason.code(), reason.text(system), inputs, reason.source().toString());
  }

  private static Object view(Object fact, MeasureSystem system) {
    return fact instanceof Quantity quantity ? Measured.of(quantity, system) : fact;
  }
}
