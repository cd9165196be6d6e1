package coldround.pages;

import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.MeasureSystem;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeMap;

/**
 * One visit, ready to be shown.
 *
 * @param purpose planned, breakdown or survey; "visit" when it was not said
 * @param done what was done, in one line
 */
public record VisitView(
    String number,
    String dateIso,
    String date,
    String purpose,
    String technician,
    String done,
    String faults,
    List<Plate.Field> findings,
    List<ReadingView> readings,
    String note) {

  /**
   * One reading.
   *
   * @param value with its unit of measure; empty when it was not taken
   * @param notTaken why there is none
   * @param suspect why it is not believed
   */
  public record ReadingView(String name, String value, String notTaken, String suspect) {
    static ReadingView of(Reading reading, MeasureSystem system) {
      String part = reading.part().isEmpty() ? "" : ", " + reading.part();
      String value = reading.value() == null ? "" : Figures.quantity(reading.value(), system);
      return new ReadingView(
          Words.title(reading.quantity()) + part, value, reading.notTaken(), reading.suspect());
    }
  }

  public VisitView {
    findings = List.copyOf(findings);
    readings = List.copyOf(readings);
  }

  /** The number as a step of an address. */
  public String address() {
    return URLEncoder.encode(number, StandardCharsets.UTF_8).replace("+", "%20");
  }

  public static VisitView of(Visit visit, MeasureSystem system) {
    return new VisitView(
        visit.number(),
        visit.date().toString(),
        Figures.day(visit.date()),
        visit.purpose().isEmpty() ? "visit" : Words.of(visit.purpose()),
        visit.technician(),
        Words.list(visit.work()),
        Words.list(visit.faults()),
        new TreeMap<>(visit.findings())
            .entrySet().stream()
                .map(f -> new Plate.Field(Words.title(f.getKey()), Words.of(f.getValue())))
                .toList(),
        visit.readings().stream().map(reading -> ReadingView.of(reading, system)).toList(),
        visit.note());
  }
}
