package coldround.scoring.edge;

import coldround.fleet.Unit;
import coldround.http.Measured;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Condition;
import coldround.scoring.Diagnostic;
import coldround.scoring.FactorScore;
import coldround.scoring.NextReading;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The condition of a unit as answers carry it, in the units of the reader. */
public record ConditionView(
    UnitName unit,
    LocalDate asOf,
    BigDecimal score,
    Range range,
    BigDecimal completeness,
    List<Factor> factors,
    Map<String, Figure> diagnostics,
    List<NextReadingView> nextReadings,
    List<String> cautions) {

  /** Names a unit in answers. */
  public record UnitName(String id, String customer, String site, String tag) {
    public static UnitName of(Unit unit) {
      return new UnitName(unit.id(), unit.customer(), unit.site(), unit.tag());
    }
  }

  /** Scores in the worst and the best case that the evidence leaves open. */
  public record Range(BigDecimal low, BigDecimal high) {}

  public record Factor(
      String factor,
      BigDecimal weight,
      BigDecimal lost,
      boolean known,
      Range lostBetween,
      List<ReasonView> reasons) {}

  /** Evidence that is missing, with what having it would do to the width of the range. */
  public record NextReadingView(
      String evidence, BigDecimal range, BigDecimal narrowsBy, ReasonView reason) {}

  /** A value, or what is missing to know it. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Figure(BigDecimal value, String unit, String missing) {}

  public static ConditionView of(
      Unit unit, Condition condition, List<NextReading> next, MeasureSystem system) {
    Map<String, Figure> figures = new LinkedHashMap<>();
    condition.diagnostics().forEach(d -> figures.put(d.name(), figure(d, system)));
    return new ConditionView(
        UnitName.of(unit),
        condition.asOf(),
        Measured.number(condition.score()),
        new Range(Measured.number(condition.low()), Measured.number(condition.high())),
        Measured.number(condition.completeness()),
        condition.factors().stream().map(factor -> factor(factor, system)).toList(),
        figures,
        next.stream().map(reading -> next(reading, system)).toList(),
        condition.cautions());
  }

  private static Factor factor(FactorScore factor, MeasureSystem system) {
    return new Factor(
        factor.factor(),
        Measured.number(factor.weight()),
        Measured.number(factor.lost()),
        factor.known(),
        new Range(Measured.number(factor.least()), Measured.number(factor.most())),
        factor.reasons().stream().map(reason -> ReasonView.of(reason, system)).toList());
  }

  private static NextReadingView next(NextReading reading, MeasureSystem system) {
    return new NextReadingView(
        reading.evidence(),
        Measured.number(reading.rangePoints()),
        Measured.number(reading.narrowsBy()),
        ReasonView.of(reading.reason(), system));
  }

  private static Figure figure(Diagnostic diagnostic, MeasureSystem system) {
    if (diagnostic.value() == null) {
      return new Figure(null, null, diagnostic.missing());
    }
    Measured measured = Measured.of(diagnostic.value(), system);
    return new Figure(measured.value(), measured.unit(), null);
  }
}
