package coldround.http;

import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/**
 * An answer to a call that changes something, as it can be kept and given again.
 *
 * @param location address of what was made; empty for none
 * @param tag strong entity tag; empty for none
 * @param body JSON; empty for none
 */
public record Reply(int status, String location, String tag, String body) {

  public Response response() {
    Response.ResponseBuilder response = Response.status(status);
    if (!location.isEmpty()) {
      response.header("Location", location);
    }
    if (!tag.isEmpty()) {
      response.header("ETag", '"' + tag + '"');
    }
    return body.isEmpty()
        ? response.build()
        : response.type(MediaType.APPLICATION_JSON_TYPE).entity(body).build();
  }
}
