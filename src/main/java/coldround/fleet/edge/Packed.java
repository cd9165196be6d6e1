package coldround.fleet.edge;

import coldround.fleet.DaySpan;
import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Values that one column of the store holds together: quantities as "148.0 psig", nameplates and
 * readings as JSON. Names are sorted, so that equal things have equal text.
 */
final class Packed {

  private static final JsonFactory JSON = new JsonFactory();

  /** Something that writes JSON and may fail as streams may. */
  private interface Writing {
    void to(JsonGenerator json) throws IOException;
  }

  private Packed() {}

  static String text(Quantity quantity) {
    return quantity == null ? "" : quantity.value() + " " + quantity.measure().code();
  }

  static Quantity quantity(String text) {
    if (text.isEmpty()) {
      return null;
    }
    int space = text.indexOf(' ');
    return Quantity.of(Double.parseDouble(text.substring(0, space)), text.substring(space + 1));
  }

  static List<String> codes(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(";"));
  }

  static String text(List<DaySpan> days) {
    return String.join(";", days.stream().map(DaySpan::toString).toList());
  }

  static List<DaySpan> days(String text) {
    return codes(text).stream().map(DaySpan::parse).toList();
  }

  static String text(Map<String, Quantity> plate) {
    return json(
        json -> {
          json.writeStartObject();
          for (Map.Entry<String, Quantity> entry : new TreeMap<>(plate).entrySet()) {
            json.writeArrayFieldStart(entry.getKey());
            json.writeNumber(entry.getValue().value());
            json.writeString(entry.getValue().measure().code());
            json.writeEndArray();
          }
          json.writeEndObject();
        });
  }

  static Map<String, Quantity> plate(String text) {
    Map<String, Quantity> plate = new HashMap<>();
    try (JsonParser json = JSON.createParser(text)) {
      json.nextToken();
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        String name = json.currentName();
        json.nextToken();
        json.nextToken();
        double value = json.getDoubleValue();
        plate.put(name, Quantity.of(value, json.nextTextValue()));
        json.nextToken();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return plate;
  }

  static String textsText(Map<String, String> texts) {
    return json(
        json -> {
          json.writeStartObject();
          for (Map.Entry<String, String> entry : new TreeMap<>(texts).entrySet()) {
            json.writeStringField(entry.getKey(), entry.getValue());
          }
          json.writeEndObject();
        });
  }

  static Map<String, String> texts(String text) {
    Map<String, String> texts = new HashMap<>();
    try (JsonParser json = JSON.createParser(text)) {
      json.nextToken();
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        texts.put(json.currentName(), json.nextTextValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return texts;
  }

  static String readingsText(List<Reading> readings) {
    return json(
        json -> {
          json.writeStartArray();
          for (Reading reading : readings) {
            writeReading(json, reading);
          }
          json.writeEndArray();
        });
  }

  private static void writeReading(JsonGenerator json, Reading reading) throws IOException {
    if (isPlain(reading)) {
      json.writeStartArray();
      json.writeString(reading.quantity());
      json.writeNumber(reading.value().value());
      json.writeString(reading.value().measure().code());
      json.writeEndArray();
    } else {
      writeNamed(json, reading);
    }
  }

  /**
   * Most readings are a value and nothing else: without names of fields they take half the room.
   */
  private static boolean isPlain(Reading reading) {
    return reading.value() != null
        && reading.equals(Reading.taken(reading.quantity(), reading.value()));
  }

  private static void writeNamed(JsonGenerator json, Reading reading) throws IOException {
    json.writeStartObject();
    json.writeStringField("quantity", reading.quantity());
    writeUnlessEmpty(json, "part", reading.part());
    if (reading.value() != null) {
      json.writeNumberField("value", reading.value().value());
      json.writeStringField("unit", reading.value().measure().code());
    }
    writeUnlessEmpty(json, "notTaken", reading.notTaken());
    writeUnlessEmpty(json, "suspect", reading.suspect());
    if (reading.confirmed()) {
      json.writeBooleanField("confirmed", true);
    }
    json.writeEndObject();
  }

  private static void writeUnlessEmpty(JsonGenerator json, String name, String text)
      throws IOException {
    if (!text.isEmpty()) {
      json.writeStringField(name, text);
    }
  }

  static List<Reading> readings(String text) {
    List<Reading> readings = new ArrayList<>();
    try (JsonParser json = JSON.createParser(text)) {
      json.nextToken();
      for (JsonToken next = json.nextToken(); next != JsonToken.END_ARRAY; ) {
        readings.add(next == JsonToken.START_ARRAY ? readPlain(json) : readNamed(json));
        next = json.nextToken();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return readings;
  }

  private static Reading readPlain(JsonParser json) throws IOException {
    String quantity = json.nextTextValue();
    json.nextToken();
    double value = json.getDoubleValue();
    String unit = json.nextTextValue();
    json.nextToken();
    return Reading.taken(quantity, Quantity.of(value, unit));
  }

  private static Reading readNamed(JsonParser json) throws IOException {
    String quantity = "";
    String part = "";
    String notTaken = "";
    String suspect = "";
    String unit = null;
    double value = 0;
    boolean confirmed = false;
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      json.nextToken();
      switch (name) {
        case "quantity" -> quantity = json.getText();
        case "part" -> part = json.getText();
        case "value" -> value = json.getDoubleValue();
        case "unit" -> unit = json.getText();
        case "notTaken" -> notTaken = json.getText();
        case "suspect" -> suspect = json.getText();
        case "confirmed" -> confirmed = json.getBooleanValue();
        default -> throw new IOException("no field " + name + " in a stored reading");
      }
    }
    Quantity measured = unit == null ? null : Quantity.of(value, unit);
    return new Reading(quantity, part, measured, notTaken, suspect, confirmed);
  }

  private static String json(Writing writing) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(text)) {
      writing.to(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }
}
