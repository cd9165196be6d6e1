package coldround.refrigerant.edge;

import coldround.http.Measured;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.refrigerant.PhaseOutRule;
import coldround.refrigerant.Refrigerant;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** A refrigerant as answers carry it. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RefrigerantView(
    String designation,
    String family,
    String zeotropeClass,
    Map<String, Measured> composition,
    String safetyGroup,
    boolean flammable,
    boolean toxic,
    BigDecimal odp,
    Gwp gwp,
    Measured boilingBubble,
    Measured boilingDew,
    Measured glide,
    Measured criticalTemperature,
    String saturation,
    List<PhaseOut> phaseOut,
    Map<String, String> sources,
    String verified) {

  /** Over 100 years, by the report of the IPCC. */
  record Gwp(BigDecimal ar4, BigDecimal ar5, BigDecimal ar6) {}

  /** One dated rule of law with its reference. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record PhaseOut(
      String rule,
      String schedule,
      String effect,
      LocalDate from,
      LocalDate until,
      Measured baselineLeft,
      Integer gwpLimit,
      String scope,
      String decides,
      String status,
      String legalReference,
      String note,
      String source) {

    static PhaseOut of(PhaseOutRule rule) {
      return new PhaseOut(
          rule.id(),
          rule.schedule(),
          rule.effect().code(),
          rule.from(),
          rule.until(),
          percent(rule.sharePercent()),
          rule.gwpLimit().isPresent() ? rule.gwpLimit().getAsInt() : null,
          orNull(rule.scope()),
          rule.decides(),
          rule.status(),
          rule.legalReference(),
          orNull(rule.note()),
          rule.source().toString());
    }
  }

  static RefrigerantView of(
      Refrigerant refrigerant, List<PhaseOutRule> rules, MeasureSystem system) {
    return new RefrigerantView(
        refrigerant.designation(),
        refrigerant.family(),
        refrigerant.zeotropeClass(),
        composition(refrigerant),
        refrigerant.safetyGroup(),
        refrigerant.flammable(),
        refrigerant.toxic(),
        Measured.number(refrigerant.odp()),
        gwp(refrigerant),
        temperature(refrigerant.boilingBubbleC(), system),
        temperature(refrigerant.boilingDewC(), system),
        Measured.of(new Quantity(refrigerant.glideK(), Measure.DELTA_K), system),
        refrigerant.criticalC().isPresent()
            ? temperature(refrigerant.criticalC().getAsDouble(), system)
            : null,
        refrigerant.curveQuality(),
        rules.stream().map(PhaseOut::of).toList(),
        new TreeMap<>(refrigerant.sources()),
        refrigerant.verified());
  }

  private static Map<String, Measured> composition(Refrigerant refrigerant) {
    Map<String, Measured> parts = new TreeMap<>();
    refrigerant
        .composition()
        .forEach((part, share) -> parts.put(part, percent(OptionalDouble.of(share))));
    return parts;
  }

  private static Gwp gwp(Refrigerant refrigerant) {
    return new Gwp(
        Measured.number(refrigerant.gwpAr4()),
        Measured.number(refrigerant.gwpAr5()),
        Measured.number(refrigerant.gwpAr6()));
  }

  static Measured temperature(double celsius, MeasureSystem system) {
    return Measured.of(new Quantity(celsius, Measure.DEG_C), system);
  }

  private static Measured percent(OptionalDouble share) {
    return share.isPresent()
        ? Measured.asGiven(new Quantity(share.getAsDouble(), Measure.PERCENT))
        : null;
  }

  private static String orNull(String text) {
    return text.isEmpty() ? null : text;
  }
}
