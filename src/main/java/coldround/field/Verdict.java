package coldround.field;

import coldround.reason.Reason;
import java.util.Locale;

/**
 * What is to be said of one quantity of a visit while the technician still stands at the unit.
 *
 * @param quantity name of the visit column, or voltage for the three line voltages together
 * @param part which one, where there are several; empty otherwise
 */
public record Verdict(String quantity, String part, Grade grade, Reason reason) {

  /** From calm to urgent. */
  public enum Grade {
    AS_EXPECTED,
    LOOK,
    ACT;

    /** As in answers and tables: "as-expected". */
    public String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  boolean isOf(String itsQuantity, String itsPart) {
    return quantity.equals(itsQuantity) && part.equals(itsPart);
  }
}
