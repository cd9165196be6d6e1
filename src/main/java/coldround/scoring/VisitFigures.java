package coldround.scoring;

import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;

/**
 * The readings of one visit in the units used inside, looked up once. What was not read, or is not
 * believed, is NaN.
 */
final class VisitFigures {

  final Visit visit;
  double ambientC = Double.NaN;
  double headKpa = Double.NaN;
  double suctionKpa = Double.NaN;
  double liquidLineC = Double.NaN;
  double suctionLineC = Double.NaN;
  double boxC = Double.NaN;
  double evaporatorInC = Double.NaN;
  double evaporatorOutC = Double.NaN;
  double l1l2V = Double.NaN;
  double l2l3V = Double.NaN;
  double l1l3V = Double.NaN;
  double compressorA = Double.NaN;

  /** Why there is no head pressure; null when nothing was said of it. */
  String noHead;

  /** Why there is no ambient; null when nothing was said of it. */
  String noAmbient;

  VisitFigures(Visit visit, double atmosphereKpa) {
    this.visit = visit;
    for (Reading reading : visit.readings()) {
      if (reading.part().isEmpty()) {
        if (reading.usable()) {
          take(reading.quantity(), reading.value(), atmosphereKpa);
        } else {
          miss(reading);
        }
      }
    }
  }

  private void take(String quantity, Quantity value, double atmosphereKpa) {
    switch (quantity) {
      case "ambient" -> ambientC = value.base();
      case "head_pressure" -> headKpa = value.pressureKpa(atmosphereKpa);
      case "suction_pressure" -> suctionKpa = value.pressureKpa(atmosphereKpa);
      case "liquid_line" -> liquidLineC = value.base();
      case "suction_line" -> suctionLineC = value.base();
      case "box" -> boxC = value.base();
      case "evaporator_in" -> evaporatorInC = value.base();
      case "evaporator_out" -> evaporatorOutC = value.base();
      case "voltage_l1_l2" -> l1l2V = value.base();
      case "voltage_l2_l3" -> l2l3V = value.base();
      case "voltage_l1_l3" -> l1l3V = value.base();
      case "compressor" -> compressorA = value.base();
      default -> {
        // fan motors come with their parts; other quantities are for the record
      }
    }
  }

  private void miss(Reading reading) {
    String why = reading.notTaken().isEmpty() ? reading.suspect() : reading.notTaken();
    if (reading.quantity().equals("head_pressure")) {
      noHead = why;
    } else if (reading.quantity().equals("ambient")) {
      noAmbient = why;
    }
  }

  /** True when the visit says anything of head pressure, or why there is none. */
  boolean speaksOfHead() {
    return !Double.isNaN(headKpa) || noHead != null;
  }

  /** Air entering the evaporator, else that of the box. */
  double coldAirC() {
    return Double.isNaN(evaporatorInC) ? boxC : evaporatorInC;
  }
}
