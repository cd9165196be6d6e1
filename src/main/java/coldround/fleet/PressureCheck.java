package coldround.fleet;

import coldround.fleet.SuspectLimits.Limit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.SaturationCurve;
import java.util.List;
import java.util.OptionalDouble;

/** Marks pressures that the refrigerant of a unit cannot have had at that ambient. */
final class PressureCheck {

  private static final String HEAD = "head_pressure";
  private static final String SUCTION = "suction_pressure";
  private static final String AMBIENT = "ambient";

  private final SaturationCurve curve;
  private final SuspectLimits limits;
  private final double atmosphereKpa;

  PressureCheck(SaturationCurve curve, SuspectLimits limits, double atmosphereKpa) {
    this.curve = curve;
    this.limits = limits;
    this.atmosphereKpa = atmosphereKpa;
  }

  /** Replaces the readings of the list that are not believed. */
  void mark(List<Reading> readings) {
    OptionalDouble ambientC = ambient(readings);
    for (int i = 0; i < readings.size(); i++) {
      Reading reading = readings.get(i);
      if (reading.usable() && !reading.confirmed() && reading.quantity().equals(HEAD)) {
        markHead(readings, i, ambientC);
      }
    }
    for (int i = 0; i < readings.size(); i++) {
      Reading reading = readings.get(i);
      if (reading.usable() && !reading.confirmed() && reading.quantity().equals(SUCTION)) {
        readings.set(i, reading.doubted(suction(reading.value(), readings)));
      }
    }
  }

  private static OptionalDouble ambient(List<Reading> readings) {
    return readings.stream()
        .filter(r -> r.quantity().equals(AMBIENT) && r.part().isEmpty() && r.usable())
        .mapToDouble(r -> r.value().base())
        .findFirst();
  }

  /** Where only another ambient makes sense of the pressure, it is the ambient that is marked. */
  private void markHead(List<Reading> readings, int place, OptionalDouble ambientC) {
    Quantity head = readings.get(place).value();
    if (believed(head, ambientC)) {
      return;
    }
    String slips = Slip.told(head, other -> believed(other, ambientC), o -> distance(o, ambientC));
    int ambient = slips.isEmpty() ? ambientMeant(readings, head) : -1;
    if (ambient >= 0) {
      Quantity air = readings.get(ambient).value();
      String meant = Slip.told(air, other -> fits(head, other), other -> 0);
      readings.set(ambient, readings.get(ambient).doubted(why(head, ambientC) + meant));
    } else {
      readings.set(place, readings.get(place).doubted(why(head, ambientC) + slips));
    }
  }

  private int ambientMeant(List<Reading> readings, Quantity head) {
    for (int i = 0; i < readings.size(); i++) {
      Reading reading = readings.get(i);
      boolean air = reading.quantity().equals(AMBIENT) && reading.usable();
      if (air
          && !reading.confirmed()
          && !Slip.told(reading.value(), o -> fits(head, o), o -> 0).isEmpty()) {
        return i;
      }
    }
    return -1;
  }

  private boolean fits(Quantity head, Quantity ambient) {
    return limits.find(AMBIENT).holds(ambient.base())
        && believed(head, OptionalDouble.of(ambient.base()));
  }

  private boolean believed(Quantity head, OptionalDouble ambientC) {
    double condensingC = saturationC(head);
    if (condensingC == Double.POSITIVE_INFINITY
        && curve.highestC() < limits.find("condenses-below").greatest()) {
      return true;
    }
    return ambientC.isPresent()
        ? limits.find("condensing-split").holds(condensingC - ambientC.getAsDouble())
            && Double.isFinite(condensingC)
        : limits.find("condensing").holds(condensingC);
  }

  private double distance(Quantity head, OptionalDouble ambientC) {
    double usualC = limits.find("usual-split").middle() + ambientC.orElse(20);
    return Math.abs(saturationC(head) - usualC);
  }

  private String why(Quantity head, OptionalDouble ambientC) {
    double condensingC = saturationC(head);
    if (condensingC == Double.POSITIVE_INFINITY) {
      return "%s is above the saturation table of %s, which ends at %s."
          .formatted(head, curve.designation(), temperature(curve.highestC()));
    }
    if (condensingC == Double.NEGATIVE_INFINITY) {
      return "%s is below the saturation table of %s, which starts at %s."
          .formatted(head, curve.designation(), temperature(curve.lowestC()));
    }
    String meaning =
        "%s means that %s condenses at %s"
            .formatted(head, curve.designation(), temperature(condensingC));
    Limit limit = limits.find(ambientC.isPresent() ? "condensing-split" : "condensing");
    return ambientC.isPresent()
        ? "%s in air of %s; a difference %s would be believed."
            .formatted(meaning, temperature(ambientC.getAsDouble()), limit.told())
        : "%s; %s would be believed.".formatted(meaning, limit.told());
  }

  private String suction(Quantity suction, List<Reading> readings) {
    OptionalDouble headKpa =
        readings.stream()
            .filter(r -> r.quantity().equals(HEAD) && r.usable())
            .mapToDouble(r -> r.value().pressureKpa(atmosphereKpa))
            .findFirst();
    if (suctionHolds(suction, headKpa)) {
      return "";
    }
    String slips = Slip.told(suction, other -> suctionHolds(other, headKpa), other -> 0);
    boolean above = !underHead(suction, headKpa);
    String why =
        above
            ? "%s is above the head pressure; were the two swapped?".formatted(suction)
            : "%s means that %s evaporates above %s."
                .formatted(
                    suction,
                    curve.designation(),
                    temperature(limits.find("suction-saturated").greatest()));
    return why + slips;
  }

  private boolean suctionHolds(Quantity suction, OptionalDouble headKpa) {
    double evaporatingC = saturationC(suction);
    boolean transcritical = curve.highestC() < limits.find("condenses-below").greatest();
    return underHead(suction, headKpa)
        && (transcritical || evaporatingC <= limits.find("suction-saturated").greatest());
  }

  private boolean underHead(Quantity suction, OptionalDouble headKpa) {
    double most = headKpa.orElse(Double.POSITIVE_INFINITY);
    return suction.pressureKpa(atmosphereKpa) <= most + limits.find("suction-over-head").greatest();
  }

  /** Infinite above the saturation table, minus infinity below it. */
  private double saturationC(Quantity pressure) {
    double kpa = pressure.pressureKpa(atmosphereKpa);
    try {
      return curve.midpointTemperatureC(kpa);
    } catch (OutsideTable outside) {
      double inside = curve.midpointPressureKpa((curve.lowestC() + curve.highestC()) / 2);
      return kpa > inside ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }
  }

  private static String temperature(double celsius) {
    Quantity fahrenheit = new Quantity(Measure.DEG_F.fromBase(celsius), Measure.DEG_F);
    return fahrenheit + " (" + new Quantity(celsius, Measure.DEG_C) + ")";
  }
}
