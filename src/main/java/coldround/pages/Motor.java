package coldround.pages;

import coldround.fleet.Reading;
import coldround.quantity.MeasureSystem;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Amps of one motor where a unit has several of a kind, as the form of a visit tells them.
 *
 * @param row of the form, from 1
 * @param of quantity, such as evaporator_fan
 * @param part which one, such as "fan 2"
 * @param why in place of a value
 */
record Motor(int row, String of, String part, String value, String why) {

  static final int MOST_ROWS = 12;

  /** Quantities of which a unit may have several motors, in the order of the form. */
  static final List<String> KINDS = List.of("evaporator_fan", "condenser_fan", "compressor");

  static boolean is(Reading reading) {
    return !reading.part().isEmpty() && KINDS.contains(reading.quantity());
  }

  static Motor of(int row, Reading reading, MeasureSystem system, Locale language) {
    return new Motor(
        row,
        reading.quantity(),
        reading.part(),
        reading.value() == null ? "" : TypedVisit.number(reading.value(), system, language),
        reading.value() == null ? reading.notTaken() : "");
  }

  void put(Map<String, List<String>> fields) {
    fields.put(field() + ".of", List.of(of));
    fields.put(field() + ".part", List.of(part));
    fields.put(field() + ".value", List.of(value));
    fields.put(field() + ".why", List.of(why));
  }

  String field() {
    return TypedVisit.MOTOR + row;
  }

  /** As one piece of an entry names it. */
  String key() {
    return of + ' ' + part;
  }

  boolean silent() {
    return value.isEmpty() && why.isEmpty();
  }

  /** A motor alone says nothing: the first one stands in every row of the form. */
  boolean blank() {
    return silent() && part.isEmpty();
  }

  boolean saysAs(Motor other) {
    return value.equals(other.value) && why.equals(other.why);
  }
}
