package coldround.pages;

import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The fields of the form of a visit as they were typed.
 *
 * @param fields by name: "read.head_pressure", "why.head_pressure", "found.condenser_coil", "work"
 */
public record TypedVisit(Map<String, List<String>> fields) {

  static final String READ = "read.";
  static final String WHY = "why.";
  static final String FOUND = "found.";
  static final String MOTOR = "motor.";

  // finer than any gauge, short of the noise of a conversion
  private static final MathContext DIGITS = new MathContext(6);

  public TypedVisit {
    Map<String, List<String>> copy = new LinkedHashMap<>();
    fields.forEach((name, values) -> copy.put(name, List.copyOf(values)));
    fields = Map.copyOf(copy);
  }

  /** An empty form of that day. */
  public static TypedVisit on(LocalDate day) {
    return new TypedVisit(Map.of("date", List.of(day.toString())));
  }

  /**
   * A stored visit as its form shows it.
   *
   * @param language whose decimal sign is written, for it is read with it
   */
  public static TypedVisit of(Visit visit, MeasureSystem system, Locale language) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    fields.put("date", List.of(visit.date().toString()));
    fields.put("technician", List.of(visit.technician()));
    fields.put("purpose", List.of(visit.purpose()));
    fields.put("note", List.of(visit.note()));
    fields.put("work", visit.work());
    fields.put("faults", visit.faults());
    visit.findings().forEach((part, grade) -> fields.put(FOUND + part, List.of(grade)));
    visit.readings().stream()
        .filter(reading -> reading.part().isEmpty())
        .forEach(reading -> put(reading, system, language, fields));
    int row = 0;
    for (Reading reading : visit.readings()) {
      if (Motor.is(reading)) {
        Motor.of(++row, reading, system, language).put(fields);
      }
    }
    return new TypedVisit(fields);
  }

  /** The rows of further motors on which something is said. */
  List<Motor> motors() {
    return IntStream.rangeClosed(1, Motor.MOST_ROWS)
        .mapToObj(
            row -> {
              String name = MOTOR + row;
              return new Motor(
                  row,
                  text(name + ".of"),
                  text(name + ".part"),
                  text(name + ".value"),
                  text(name + ".why"));
            })
        .filter(motor -> !motor.blank())
        .toList();
  }

  private static void put(
      Reading reading, MeasureSystem system, Locale language, Map<String, List<String>> fields) {
    if (reading.value() == null) {
      fields.put(WHY + reading.quantity(), List.of(reading.notTaken()));
    } else {
      fields.put(READ + reading.quantity(), List.of(number(reading.value(), system, language)));
    }
  }

  static String number(Quantity quantity, MeasureSystem system, Locale language) {
    BigDecimal value = BigDecimal.valueOf(quantity.in(system).value()).round(DIGITS);
    return TypedNumber.written(value.stripTrailingZeros().toPlainString(), language);
  }

  /** What stands in the field; empty for nothing. */
  public String text(String name) {
    List<String> values = fields.getOrDefault(name, List.of());
    return values.isEmpty() ? "" : values.get(0).strip().replace("\r\n", "\n");
  }

  /** What is ticked. */
  public List<String> all(String name) {
    return fields.getOrDefault(name, List.of()).stream()
        .map(String::strip)
        .filter(value -> !value.isEmpty())
        .distinct()
        .toList();
  }
}
