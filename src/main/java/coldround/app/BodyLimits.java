package coldround.app;

import coldround.http.JsonBody;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** What bodies of JSON may be at most. Files have limits of their own. */
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

  /** Bytes, before they are understood. */
  @Provider
  static class Length implements ReaderInterceptor {
    @Override
    public Object aroundReadFrom(ReaderInterceptorContext context) throws IOException {
      MediaType type = context.getMediaType();
      if (type != null && type.getSubtype().endsWith("json")) {
        context.setInputStream(new Counted(context.getInputStream()));
      }
      return context.proceed();
    }
  }

  private static final class Counted extends FilterInputStream {
    private long read;

    Counted(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int one = super.read();
      count(one < 0 ? 0 : 1);
      return one;
    }

    @Override
    public int read(byte[] bytes, int from, int most) throws IOException {
      int some = super.read(bytes, from, most);
      count(Math.max(0, some));
      return some;
    }

    private void count(int more) {
      read += more;
      if (read > JsonBody.MOST_BYTES) {
        throw JsonBody.tooLarge();
      }
    }
  }
}
