package coldround.pages;

import coldround.fleet.Fault;
import coldround.quantity.MeasureSystem;

/** One fault, ready to be shown; what is not known is empty. */
public record FaultView(
    String dateIso,
    String date,
    String mode,
    String cause,
    String repaired,
    String downtime,
    String stockLost,
    String note) {

  public static FaultView of(Fault fault, MeasureSystem system) {
    return new FaultView(
        fault.date().toString(),
        Figures.day(fault.date()),
        Words.title(fault.failureMode()),
        fault.cause(),
        fault.repaired() == null ? "" : Figures.day(fault.repaired()),
        fault.downtime() == null ? "" : Figures.quantity(fault.downtime(), system),
        fault.stockLost() == null ? "" : Figures.quantity(fault.stockLost(), system),
        fault.note());
  }
}
