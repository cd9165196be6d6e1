package coldround.app;

import coldround.http.JsonBody;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.ByteArrayInputStream;
import java.io.IOException;

/**
 * What bodies of JSON may be at most, and that what they say is text. Files have limits of their
 * own.
 */
class BodyLimits {

  /** Nothing that is sent here is deeper than ten. */
  private static final int DEEPEST = 40;

  private BodyLimits() {}

  /** Objects and lists within one another. */
  @Singleton
  static class Depth implements ObjectMapperCustomizer {
    @Override
    public void customize(ObjectMapper json) {
      json.getFactory()
          .setStreamReadConstraints(
              StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build());
    }
  }

  /** Bytes and characters, before they are understood. */
  @Provider
  static class Content implements ReaderInterceptor {

    private final JsonBody json;

    @Inject
    Content(JsonBody json) {
      this.json = json;
    }

    @Override
    public Object aroundReadFrom(ReaderInterceptorContext context) throws IOException {
      MediaType type = context.getMediaType();
      if (type != null && type.getSubtype().endsWith("json")) {
        byte[] body = JsonBody.bytes(context.getInputStream());
        json.refuseWhatIsNoText(body);
        context.setInputStream(new ByteArrayInputStream(body));
      }
      return context.proceed();
    }
  }
}
