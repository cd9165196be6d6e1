package coldround.http;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ValueRange;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/** Query parameters turned into values, or into a problem that says what they should be. */
public final class Parameters {

  /** Largest number of items on one page of a list. */
  public static final int MOST = 500;

  private static final int USUAL = 100;

  /** Of RFC 3339; others are no year that is meant, and more than a database keeps. */
  private static final ValueRange YEARS = ValueRange.of(0, 9999);

  private Parameters() {}

  public static MeasureSystem measures(String text) {
    if (text == null || text.isEmpty() || text.equals("us")) {
      return MeasureSystem.US;
    }
    if (text.equals("si")) {
      return MeasureSystem.SI;
    }
    throw Problem.badField("measures", text, "is us or si");
  }

  public static LocalDate date(String name, String text, LocalDate unsaid) {
    if (text == null || text.isEmpty()) {
      return unsaid;
    }
    try {
      LocalDate day = LocalDate.parse(text);
      if (YEARS.isValidValue(day.getYear())) {
        return day;
      }
    } catch (DateTimeParseException e) {
      // told below
    }
    throw Problem.badField(name, text, "is a day such as 2026-05-31");
  }

  public static int limit(String text) {
    if (text == null || text.isEmpty()) {
      return USUAL;
    }
    try {
      int limit = Integer.parseInt(text);
      if (limit >= 1 && limit <= MOST) {
        return limit;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw Problem.badField("limit", text, "is a whole number from 1 to " + MOST);
  }

  /** A whole number of 0 or more. */
  public static int whole(String name, String text, int unsaid) {
    if (text == null || text.isEmpty()) {
      return unsaid;
    }
    if (text.matches("\\d{1,9}")) {
      return Integer.parseInt(text);
    }
    throw Problem.badField(name, text, "is a whole number of 0 or more");
  }

  public static double number(String name, String text) {
    try {
      double value = Double.parseDouble(text == null ? "" : text.strip());
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw Problem.badField(name, text, "is a number, with a point for decimals");
  }

  public static Measure measure(String name, String text) {
    return Measure.find(text)
        .orElseThrow(
            () -> Problem.badField(name, text, "is a unit of measure such as degF, degC or psig"));
  }

  public static Quantity quantity(String name, String value, String measureName, String measure) {
    return new Quantity(number(name, value), measure(measureName, measure));
  }

  /**
   * NUL stands in no code, name, day or note, and PostgreSQL takes no text that holds it.
   *
   * @param sent values by name, of an address or a form
   * @throws Problem 400 that names the first parameter or field with one
   */
  public static void refuseNul(Map<String, List<String>> sent) {
    sent.forEach(
        (name, values) -> {
          if (values.stream().anyMatch(value -> value.indexOf('\0') >= 0)) {
            throw Problem.badField(name, "", "holds the character NUL (%00); leave it out");
          }
        });
  }

  /** A place in a list as the opaque text of a cursor. */
  public static String cursor(String place) {
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(place.getBytes(StandardCharsets.UTF_8));
  }

  /** The place a cursor stands for; empty text for none. */
  public static String place(String cursor) {
    if (cursor == null || cursor.isEmpty()) {
      return "";
    }
    try {
      String place = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
      if (place.indexOf('\0') >= 0) {
        throw badCursor(cursor);
      }
      return place;
    } catch (IllegalArgumentException e) {
      throw badCursor(cursor);
    }
  }

  public static Problem badCursor(String cursor) {
    return Problem.badField(
        "after", cursor, "is the text that 'next' of the previous page gave, unchanged");
  }
}
