package coldround.field.edge;

import coldround.field.FieldReading;
import coldround.field.FieldVisit;
import coldround.http.Problem;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A visit as it is sent in JSON. */
@Schema(name = "VisitFromTheField")
record VisitBody(
    @Schema(description = "Id of the unit", examples = "u1") String unit,
    @Schema(description = "Number of the visit; one is made up where there is none") String visit,
    @Schema(description = "Day of the visit", examples = "2026-05-12") String date,
    @Schema(examples = "planned") String purpose,
    String technician,
    List<ReadingBody> readings,
    @Schema(description = "Grade by part") Map<String, String> findings,
    @Schema(description = "What was done") List<String> work,
    @Schema(description = "Failures found") List<String> faults,
    Amount refrigerantAdded,
    Amount refrigerantRecovered,
    String note) {

  /** A value with its unit of measure, or why there is none. */
  @Schema(name = "ReadingFromTheField")
  record ReadingBody(
      @Schema(description = "Name of a visit column", examples = "head_pressure") String quantity,
      @Schema(description = "Which one, where there are several") String part,
      @Schema(examples = "148") BigDecimal value,
      @Schema(examples = "psig") String unit,
      String notTaken) {}

  /** A mass of refrigerant. */
  record Amount(@Schema(examples = "1.5") BigDecimal value, @Schema(examples = "lb") String unit) {}

  FieldVisit read() {
    return new FieldVisit(
        text(visit),
        text(date),
        text(technician),
        text(purpose),
        fieldReadings(),
        grades(),
        texts("work", work),
        texts("faults", faults),
        text(note));
  }

  private List<FieldReading> fieldReadings() {
    List<FieldReading> all = new ArrayList<>();
    List<ReadingBody> sent = readings == null ? List.of() : readings;
    for (int i = 0; i < sent.size(); i++) {
      ReadingBody reading = present("/readings/" + i, sent.get(i));
      all.add(
          new FieldReading(
              "/readings/" + i,
              text(reading.quantity),
              text(reading.part),
              number(reading.value),
              text(reading.unit),
              text(reading.notTaken)));
    }
    amount("refrigerantAdded", "refrigerant_added", refrigerantAdded, all);
    amount("refrigerantRecovered", "refrigerant_recovered", refrigerantRecovered, all);
    return all;
  }

  private static void amount(
      String field, String quantity, Amount amount, List<FieldReading> readings) {
    if (amount != null) {
      readings.add(
          new FieldReading("/" + field, quantity, "", number(amount.value), text(amount.unit), ""));
    }
  }

  private Map<String, String> grades() {
    Map<String, String> grades = new LinkedHashMap<>();
    if (findings != null) {
      findings.forEach((part, grade) -> grades.put(part, text(grade)));
    }
    return grades;
  }

  private static List<String> texts(String field, List<String> sent) {
    List<String> texts = new ArrayList<>();
    List<String> all = sent == null ? List.of() : sent;
    for (int i = 0; i < all.size(); i++) {
      texts.add(present("/" + field + "/" + i, all.get(i)));
    }
    return texts;
  }

  private static <T> T present(String path, T value) {
    if (value == null) {
      throw Problem.badField(path, null, "is null; leave it out");
    }
    return value;
  }

  private static String text(String sent) {
    return sent == null ? "" : sent;
  }

  /** As it was written, for 1e999999999 written out would fill the memory. */
  private static String number(BigDecimal sent) {
    return sent == null ? "" : sent.toString();
  }
}
