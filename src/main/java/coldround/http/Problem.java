package coldround.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A refusal told as RFC 9457 problem details. Thrown anywhere at the edge; the type is stable and
 * meant for programs, title and detail are for people.
 */
public final class Problem extends RuntimeException {

  /** Media type of RFC 9457. */
  public static final MediaType MEDIA_TYPE = new MediaType("application", "problem+json");

  /**
   * One wrong field of a request.
   *
   * @param field parameter, JSON pointer or column
   * @param value what was sent, empty when nothing was
   * @param message what is wrong and how to mend it
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record FieldError(String field, String value, String message) {}

  private final int status;
  private final String type;
  private final String title;
  private final transient List<FieldError> errors;
  private final transient Map<String, String> headers = new LinkedHashMap<>();
  private final transient Map<String, Object> extensions = new LinkedHashMap<>();

  public Problem(int status, String type, String title, String detail, List<FieldError> errors) {
    super(detail);
    this.status = status;
    this.type = type;
    this.title = title;
    this.errors = List.copyOf(errors);
  }

  /** 404: there is nothing of that name, or it is not for the caller to know. */
  public static Problem notFound(String what) {
    return new Problem(404, "not-found", "Not found", "There is no " + what + ".", List.of());
  }

  /** 400: one parameter or field cannot be used as it is. */
  public static Problem badField(String field, String value, String message) {
    return badFields(List.of(new FieldError(field, value, message)));
  }

  /** 400: several fields cannot be used as they are. */
  public static Problem badFields(List<FieldError> errors) {
    String detail =
        errors.size() == 1
            ? errors.get(0).field() + ": " + errors.get(0).message()
            : errors.size() + " fields need mending; see errors.";
    return new Problem(400, "bad-request", "The request cannot be used as it is", detail, errors);
  }

  /** 403: the role of the caller may not do this, whatever it is done to. */
  public static Problem notAllowed() {
    return new Problem(
        403,
        "not-allowed",
        "Not allowed",
        "The role of your account may not do this; docs/access.md tells what each role may.",
        List.of());
  }

  /** 409: what is asked contradicts what is known. */
  public static Problem conflict(String detail) {
    return new Problem(409, "conflict", "This contradicts what is known", detail, List.of());
  }

  /** 422: well formed, but it says nothing that can be done. */
  public static Problem unprocessable(String type, String title, String detail) {
    return new Problem(422, type, title, detail, List.of());
  }

  /** Adds a header to the answer, such as Retry-After. */
  public Problem with(String header, String value) {
    headers.put(header, value);
    return this;
  }

  /** Adds a member of its own to the body; null adds none. */
  public Problem telling(String member, Object value) {
    if (value != null) {
      extensions.put(member, value);
    }
    return this;
  }

  public int status() {
    return status;
  }

  /** By name. */
  public Map<String, String> headers() {
    return Map.copyOf(headers);
  }

  public List<FieldError> errors() {
    return errors;
  }

  /** Members of the JSON object, in order. */
  public Map<String, Object> body() {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("type", "urn:coldround:problem:" + type);
    body.put("title", title);
    body.put("status", status);
    body.put("detail", getMessage());
    if (!errors.isEmpty()) {
      body.put("errors", errors);
    }
    body.putAll(extensions);
    return body;
  }

  public Response response() {
    Response.ResponseBuilder response = Response.status(status).type(MEDIA_TYPE).entity(body());
    headers.forEach(response::header);
    return response.build();
  }
}
