package coldround.http;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.type.LogicalType;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Bodies of calls read strictly: a field that is misspelt, told twice or of another kind is a 400
 * that names it, for what is silently passed over is missed only later.
 */
@ApplicationScoped
public class JsonBody {

  /** Of a body of JSON. */
  public static final int MOST_BYTES = 1 << 20;

  /** Whole pairs are one character to a pattern. */
  private static final Pattern HALF = Pattern.compile("\\p{Cs}");

  private final ObjectMapper strict;

  @Inject
  public JsonBody(ObjectMapper json) {
    strict =
        json.copy()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
    strict
        .coercionConfigFor(LogicalType.Float)
        .setCoercion(CoercionInputShape.String, CoercionAction.Fail)
        .setCoercion(CoercionInputShape.EmptyString, CoercionAction.Fail);
  }

  /** All bytes of a body of at most 1 MiB. */
  public static byte[] bytes(InputStream body) {
    try {
      byte[] bytes = body == null ? new byte[0] : body.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw tooLarge();
      }
      return bytes;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * NUL (\\u0000) is text to JSON and none to PostgreSQL, so a store of the other kind that held
   * one could not move there. Half of a surrogate pair (RFC 8259, section 8.2) is none in UTF-8, so
   * that no answer could tell it again.
   *
   * @throws Problem 400 that names the first field whose text or name holds one
   */
  public void refuseWhatIsNoText(byte[] body) {
    try (JsonParser parser = strict.getFactory().createParser(body)) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        boolean text = token == JsonToken.FIELD_NAME || token == JsonToken.VALUE_STRING;
        String fault = text ? fault(parser.getText()) : "";
        if (!fault.isEmpty()) {
          String at = parser.getParsingContext().pathAsPointer().toString();
          String told = HALF.matcher(at.replace("\0", "\\u0000")).replaceAll("\ufffd");
          throw Problem.badField(told.isEmpty() ? "/" : told, null, fault + "; leave it out");
        }
      }
    } catch (JsonProcessingException e) {
      // what is no JSON is told by who reads it
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String fault(String text) {
    if (text.indexOf('\0') >= 0) {
      return "holds the character NUL (\\u0000)";
    }
    return HALF.matcher(text).find() ? "holds half of a surrogate pair, which is no character" : "";
  }

  /** 413. */
  public static Problem tooLarge() {
    return new Problem(
        413,
        "too-large",
        "The body is too large",
        "At most " + MOST_BYTES + " bytes are taken here.",
        List.of());
  }

  /**
   * @throws Problem 400 for what is no JSON of that shape
   */
  public <T> T read(byte[] body, Class<T> shape) {
    try {
      T read = body.length == 0 ? null : strict.readValue(body, shape);
      if (read == null) {
        throw Problem.badField("/", null, "the body is empty; the description is at /q/openapi");
      }
      return read;
    } catch (UnrecognizedPropertyException e) {
      String known =
          e.getKnownPropertyIds().stream()
              .map(String::valueOf)
              .sorted()
              .collect(Collectors.joining(", "));
      throw Problem.badField(pointer(e), null, "is no field here; known are " + known);
    } catch (StreamConstraintsException e) {
      throw Problem.badField(
          "/", null, "is nested deeper, or says longer things, than is read here");
    } catch (MismatchedInputException e) {
      throw Problem.badField(pointer(e), null, "is of another kind than " + kind(e) + place(e));
    } catch (JsonMappingException e) {
      throw Problem.badField(pointer(e), null, "cannot be read" + place(e));
    } catch (JsonProcessingException e) {
      throw Problem.badField("/", null, "is no JSON" + place(e));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The place of a fault as a JSON pointer (RFC 6901). */
  private static String pointer(JsonMappingException e) {
    return e.getPath().stream()
        .map(
            step ->
                step.getFieldName() == null
                    ? String.valueOf(step.getIndex())
                    : step.getFieldName().replace("~", "~0").replace("/", "~1"))
        .collect(Collectors.joining("/", "/", ""));
  }

  private static String kind(MismatchedInputException e) {
    Class<?> wanted = e.getTargetType();
    if (wanted == null) {
      return "is described at /q/openapi";
    }
    if (Number.class.isAssignableFrom(wanted)) {
      return "a number without quotes, such as 148";
    }
    if (wanted == String.class) {
      return "a text";
    }
    return List.class.isAssignableFrom(wanted) ? "a list" : "an object";
  }

  private static String place(JsonProcessingException e) {
    JsonLocation at = e.getLocation();
    return at == null ? "" : " (line %d, column %d)".formatted(at.getLineNr(), at.getColumnNr());
  }
}
