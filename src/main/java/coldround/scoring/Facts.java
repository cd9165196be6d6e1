package coldround.scoring;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Inputs;
import java.util.Map;

/** Facts of a reason, kept in the order in which they are told. */
final class Facts {

  private Facts() {}

  /** Names and facts by turns. */
  static Map<String, Object> of(Object... namesAndFacts) {
    return Inputs.of(namesAndFacts);
  }

  static Quantity years(double years) {
    return new Quantity(years, Measure.YEAR);
  }

  static Quantity days(double days) {
    return new Quantity(days, Measure.DAY);
  }

  static Quantity celsius(double celsius) {
    return new Quantity(celsius, Measure.DEG_C);
  }

  static Quantity kelvin(double difference) {
    return new Quantity(difference, Measure.DELTA_K);
  }

  static Quantity kelvinADay(double rise) {
    return new Quantity(rise, Measure.DELTA_K_PER_DAY);
  }

  static Quantity percent(double percent) {
    return new Quantity(percent, Measure.PERCENT);
  }

  /** A share of 1, told in percent. */
  static Quantity share(double share) {
    return new Quantity(100 * share, Measure.PERCENT);
  }

  static Quantity amps(double amps) {
    return new Quantity(amps, Measure.AMPERE);
  }

  static Quantity volts(double volts) {
    return new Quantity(volts, Measure.VOLT);
  }
}
