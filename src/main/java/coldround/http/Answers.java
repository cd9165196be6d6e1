package coldround.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/** Answers to reads: a strong ETag over the bytes, 304 where the caller has them already. */
@ApplicationScoped
public class Answers {

  private final ObjectMapper json;

  @Inject
  public Answers(ObjectMapper json) {
    this.json = json;
  }

  /** JSON of the body, or 304 by If-None-Match (RFC 9110). */
  public Response read(Object body, Request request) {
    return read(bytes(body), MediaType.APPLICATION_JSON_TYPE, request).build();
  }

  /** A list with its RFC 8288 link to the following page. */
  public Response list(Page<?> page, Request request, UriInfo uri) {
    Response.ResponseBuilder response = read(bytes(page), MediaType.APPLICATION_JSON_TYPE, request);
    if (page.next() != null) {
      response.link(
          uri.getRequestUriBuilder().replaceQueryParam("after", page.next()).build(), "next");
    }
    return response.build();
  }

  /** Bytes of any type, or 304. */
  public Response.ResponseBuilder read(byte[] body, MediaType type, Request request) {
    return read(body, tag(body), type, request);
  }

  /** The same where the tag is known already. */
  public Response.ResponseBuilder read(
      byte[] body, String strong, MediaType type, Request request) {
    EntityTag tag = new EntityTag(strong);
    Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
    return unchanged != null ? unchanged.tag(tag) : Response.ok(body, type).tag(tag);
  }

  /** JSON as it is sent. */
  public byte[] bytes(Object body) {
    try {
      return json.writeValueAsBytes(body);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Strong tag of a body, without quotes. */
  public static String tag(byte[] body) {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(body);
      return Base64.getUrlEncoder().withoutPadding().encodeToString(hash).substring(0, 27);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
