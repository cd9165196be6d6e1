package coldround.refrigerant.edge;

import coldround.http.Measured;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.SaturationCurve;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Bubble point, dew point and the midpoint of both. What was asked stands as temperature or
 * pressure; pressures are gauge over the air pressure given, and absolute besides. A point that the
 * table does not cover is left out and told in missing.
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record SaturationView(
    String refrigerant,
    Measured temperature,
    Measured pressure,
    Measured pressureAbsolute,
    Measured bubbleTemperature,
    Measured dewTemperature,
    Measured midpointTemperature,
    Measured bubblePressure,
    Measured dewPressure,
    Measured midpointPressure,
    Measured bubblePressureAbsolute,
    Measured dewPressureAbsolute,
    Measured midpointPressureAbsolute,
    Measured airPressure,
    String quality,
    Measured uncertainty,
    List<String> missing,
    String source) {

  /** Collects what is outside the table while the rest is worked out. */
  private static final class Points {
    private final double at;
    private final List<OutsideTable> outside = new ArrayList<>();

    Points(double at) {
      this.at = at;
    }

    OptionalDouble of(DoubleUnaryOperator curve) {
      try {
        return OptionalDouble.of(curve.applyAsDouble(at));
      } catch (OutsideTable e) {
        outside.add(e);
        return OptionalDouble.empty();
      }
    }

    /**
     * @throws OutsideTable when not one point is covered
     */
    List<String> missing(OptionalDouble... points) {
      if (List.of(points).stream().noneMatch(OptionalDouble::isPresent)) {
        throw outside.get(0);
      }
      return outside.stream().map(OutsideTable::getMessage).distinct().toList();
    }
  }

  static SaturationView ofPressure(
      SaturationCurve curve, double kpa, double airKpa, MeasureSystem system) {
    Points points = new Points(kpa);
    OptionalDouble bubble = points.of(curve::bubbleTemperatureC);
    OptionalDouble dew = points.of(curve::dewTemperatureC);
    OptionalDouble midpoint = points.of(curve::midpointTemperatureC);
    List<String> missing = points.missing(bubble, dew);
    return new SaturationView(
        curve.designation(),
        null,
        gauge(kpa, airKpa, system),
        absolute(kpa, system),
        temperature(bubble, system),
        temperature(dew, system),
        temperature(midpoint, system),
        null,
        null,
        null,
        null,
        null,
        null,
        absolute(airKpa, system),
        curve.quality(),
        uncertainty(curve, system),
        missing.isEmpty() ? null : missing,
        curve.source().toString());
  }

  static SaturationView ofTemperature(
      SaturationCurve curve, double celsius, double airKpa, MeasureSystem system) {
    Points points = new Points(celsius);
    OptionalDouble bubble = points.of(curve::bubblePressureKpa);
    OptionalDouble dew = points.of(curve::dewPressureKpa);
    OptionalDouble midpoint = points.of(curve::midpointPressureKpa);
    List<String> missing = points.missing(bubble, dew);
    return new SaturationView(
        curve.designation(),
        RefrigerantView.temperature(celsius, system),
        null,
        null,
        null,
        null,
        null,
        gauge(bubble, airKpa, system),
        gauge(dew, airKpa, system),
        gauge(midpoint, airKpa, system),
        absolute(bubble, system),
        absolute(dew, system),
        absolute(midpoint, system),
        absolute(airKpa, system),
        curve.quality(),
        uncertainty(curve, system),
        missing.isEmpty() ? null : missing,
        curve.source().toString());
  }

  static Measured uncertainty(SaturationCurve curve, MeasureSystem system) {
    return Measured.of(new Quantity(curve.uncertaintyK(), Measure.DELTA_K), system);
  }

  static Measured gauge(double kpa, double airKpa, MeasureSystem system) {
    return Measured.of(new Quantity(kpa - airKpa, Measure.KPAG), system);
  }

  static Measured absolute(double kpa, MeasureSystem system) {
    return Measured.of(new Quantity(kpa, Measure.KPA), system);
  }

  private static Measured gauge(OptionalDouble kpa, double airKpa, MeasureSystem system) {
    return kpa.isPresent() ? gauge(kpa.getAsDouble(), airKpa, system) : null;
  }

  private static Measured absolute(OptionalDouble kpa, MeasureSystem system) {
    return kpa.isPresent() ? absolute(kpa.getAsDouble(), system) : null;
  }

  private static Measured temperature(OptionalDouble celsius, MeasureSystem system) {
    return celsius.isPresent() ? RefrigerantView.temperature(celsius.getAsDouble(), system) : null;
  }
}
