package coldround.field.edge;

import coldround.field.Judgement;
import coldround.field.LeftOut;
import coldround.field.Verdict;
import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.http.Measured;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A visit in the shape in which it is sent, with what is to be said of its readings. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record VisitView(
    String unit,
    String visit,
    LocalDate date,
    String purpose,
    String technician,
    List<ReadingView> readings,
    Map<String, String> findings,
    List<String> work,
    List<String> faults,
    Measured refrigerantAdded,
    Measured refrigerantRecovered,
    String note,
    List<VerdictView> verdicts,
    List<VerdictView> leftOut) {

  private static final String ADDED = "refrigerant_added";
  private static final String RECOVERED = "refrigerant_recovered";

  /** A value with its unit, or why there is none. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ReadingView(String quantity, String part, BigDecimal value, String unit, String notTaken) {

    static ReadingView of(Reading reading, MeasureSystem system) {
      Measured measured = Measured.of(reading.value(), system);
      return new ReadingView(
          reading.quantity(),
          orNull(reading.part()),
          measured == null ? null : measured.value(),
          measured == null ? null : measured.unit(),
          orNull(reading.notTaken()));
    }
  }

  /**
   * What is to be said of one quantity.
   *
   * @param verdict as-expected, look or act; null for a reading that could not be judged
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record VerdictView(
      String quantity,
      String part,
      String verdict,
      String code,
      String text,
      Map<String, Object> inputs,
      String source) {

    static VerdictView of(Verdict verdict, MeasureSystem system) {
      return of(
          verdict.quantity(),
          verdict.part(),
          verdict.grade().code(),
          ReasonView.of(verdict.reason(), system));
    }

    static VerdictView of(LeftOut leftOut, MeasureSystem system) {
      return of(leftOut.quantity(), leftOut.part(), null, ReasonView.of(leftOut.reason(), system));
    }

    private static VerdictView of(String quantity, String part, String verdict, ReasonView why) {
      return new VerdictView(
          quantity, orNull(part), verdict, why.code(), why.text(), why.inputs(), why.source());
    }
  }

  static VisitView of(String unit, Visit visit, Judgement judgement, MeasureSystem system) {
    return new VisitView(
        unit,
        visit.number(),
        visit.date(),
        orNull(visit.purpose()),
        orNull(visit.technician()),
        visit.readings().stream()
            .filter(reading -> amount(reading, visit) == null)
            .map(reading -> ReadingView.of(reading, system))
            .toList(),
        new TreeMap<>(visit.findings()),
        visit.work(),
        visit.faults(),
        visit.value(ADDED).map(mass -> Measured.of(mass, system)).orElse(null),
        visit.value(RECOVERED).map(mass -> Measured.of(mass, system)).orElse(null),
        orNull(visit.note()),
        judgement.verdicts().stream().map(v -> VerdictView.of(v, system)).toList(),
        judgement.leftOut().stream().map(l -> VerdictView.of(l, system)).toList());
  }

  /** Refrigerant has fields of its own, but where there is a reason in place of a mass. */
  private static Reading amount(Reading reading, Visit visit) {
    boolean mass = List.of(ADDED, RECOVERED).contains(reading.quantity());
    boolean told = visit.value(reading.quantity()).filter(v -> v == reading.value()).isPresent();
    return mass && told ? reading : null;
  }

  private static String orNull(String text) {
    return text.isEmpty() ? null : text;
  }
}
