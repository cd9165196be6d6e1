package coldround.upkeep;

import coldround.quantity.Quantity;

/**
 * What doing a task on time is expected to save over a span of days, in money.
 *
 * @param breakdowns fewer faults, at what each kind of fault costs
 * @param energy less electricity
 * @param refrigerant less refrigerant lost
 * @param over span in which that is saved
 */
public record Worth(Quantity breakdowns, Quantity energy, Quantity refrigerant, Quantity over) {

  double sum() {
    return breakdowns.value() + energy.value() + refrigerant.value();
  }

  /** Money saved per minute of work. */
  double perMinute(int minutes) {
    return sum() / minutes;
  }
}
