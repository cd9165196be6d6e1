package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.refrigerant.ExpectedHead;
import coldround.scoring.RoofCheck.Finding;
import coldround.scoring.RoofVerdict;
import java.util.List;

/**
 * Answers of the roof calculator, ready to be shown.
 *
 * @param expected condensing temperature and head pressure to expect
 * @param head how they come about
 * @param verdict empty where no head pressure was read
 * @param verdictCode the same for the sheet of styles
 * @param split what the head pressure that was read means
 * @param why reason of the verdict
 * @param next what to check, in order
 */
public record RoofView(
    List<Plate.Field> expected,
    Told head,
    String verdict,
    String verdictCode,
    String split,
    Told why,
    List<Told> next) {

  public RoofView {
    expected = List.copyOf(expected);
    next = List.copyOf(next);
  }

  /**
   * @param finding null where no head pressure was read
   * @param airKpa air pressure at the place, which the gauge reads over
   */
  public static RoofView of(
      ExpectedHead head, Finding finding, double airKpa, MeasureSystem system) {
    List<Plate.Field> expected =
        List.of(
            field("Condensing temperature", head.condensingC(), Measure.DEG_C, system),
            field("Head pressure", head.pressureKpa() - airKpa, Measure.KPAG, system));
    return new RoofView(
        expected,
        Told.of(head.reason(), system),
        finding == null ? "" : said(finding.verdict()),
        finding == null ? "" : finding.verdict().code(),
        finding == null ? "" : Figures.split(finding.splitK(), system),
        finding == null ? null : Told.of(finding.why(), system),
        finding == null ? List.of() : finding.next().stream().map(r -> told(r, system)).toList());
  }

  private static Told told(Reason reason, MeasureSystem system) {
    return Told.of(reason, system);
  }

  private static Plate.Field field(
      String name, double base, Measure measure, MeasureSystem system) {
    return new Plate.Field(name, Figures.quantity(new Quantity(base, measure), system));
  }

  /** The verdict as a person says it. */
  static String said(RoofVerdict verdict) {
    return switch (verdict) {
      case IMPOSSIBLE -> "Not to be believed";
      case TOO_COOL -> "Too cool to judge";
      case LOW -> "Lower than expected";
      case AS_EXPECTED -> "As expected";
      case WATCH -> "Watch it";
      case HIGH -> "Clean the coil";
      case FAR -> "Far too high";
    };
  }
}
