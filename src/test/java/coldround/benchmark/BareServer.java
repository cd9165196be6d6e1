package coldround.benchmark;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The floor under reads: the HTTP server that the service is built on, giving the same bytes from
 * memory and nothing else, no token, no routing, in a process of its own.
 */
public final class BareServer {

  private BareServer() {}

  /** Arguments: port, file of the body, its tag. */
  public static void main(String... arguments) throws Exception {
    Buffer body = Buffer.buffer(Files.readAllBytes(Path.of(arguments[1])));
    String tag = arguments[2];
    Vertx vertx = Vertx.vertx();
    for (int i = 0; i < Runtime.getRuntime().availableProcessors() * 2; i++) {
      vertx.deployVerticle(
          new io.vertx.core.AbstractVerticle() {
            @Override
            public void start() {
              this.vertx
                  .createHttpServer()
                  .requestHandler(
                      request -> {
                        var response = request.response().putHeader("ETag", tag);
                        if (tag.equals(request.getHeader("If-None-Match"))) {
                          response.setStatusCode(304).end();
                        } else {
                          response.putHeader("Content-Type", "application/json").end(body);
                        }
                      })
                  .listen(Integer.parseInt(arguments[0]), "127.0.0.1");
            }
          });
    }
  }
}
