package coldround.rounds.edge;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * A many-to-many service of travel times that the operator has named by an address template. Only
 * the configuration names it, no caller can; it is asked by GET, redirects are not followed, and an
 * answer that is too late, too long or not as expected is refused in words.
 */
@ApplicationScoped
class DurationsSource {

  private static final int MOST_BYTES = 20_000_000;
  private static final double MOST_SECONDS = 7 * 86_400;

  /** Durations and, if the source tells them, distances; null where it knows no way. */
  record Answer(Double[][] minutes, Double[][] km) {}

  /** Coordinates in degrees. */
  record Point(double latitude, double longitude) {
    String lonLat() {
      return String.format(Locale.ROOT, "%.5f,%.5f", longitude, latitude);
    }
  }

  /** Why there is no answer. */
  static final class Failed extends Exception {
    private static final long serialVersionUID = 1;

    Failed(String message) {
      super(message);
    }
  }

  private final ObjectMapper json;
  private final String template;
  private final String durations;
  private final String distances;
  private final double secondsEach;
  private final HttpClient client =
      HttpClient.newBuilder()
          .connectTimeout(Duration.ofSeconds(5))
          .followRedirects(HttpClient.Redirect.NEVER)
          .build();

  @Inject
  DurationsSource(
      ObjectMapper json,
      @ConfigProperty(name = "coldround.travel.url") Optional<String> template,
      @ConfigProperty(name = "coldround.travel.durations", defaultValue = "/durations")
          String durations,
      @ConfigProperty(name = "coldround.travel.distances", defaultValue = "/distances")
          String distances,
      @ConfigProperty(name = "coldround.travel.seconds-each", defaultValue = "1")
          double secondsEach) {
    this.json = json;
    this.template = template.map(String::strip).orElse("");
    this.durations = durations;
    this.distances = distances;
    this.secondsEach = secondsEach;
  }

  /** A template that cannot be asked stops the start, not the first plan. */
  void check(@Observes StartupEvent start) {
    if (!named()) {
      return;
    }
    URI address;
    try {
      address = address(List.of(new Point(0, 0)), 1);
    } catch (IllegalArgumentException e) {
      throw new IllegalStateException("coldround.travel.url is no address: " + e.getMessage(), e);
    }
    boolean web = "http".equals(address.getScheme()) || "https".equals(address.getScheme());
    if (!web || address.getHost() == null || !template.contains("{coordinates}")) {
      throw new IllegalStateException(
          "coldround.travel.url must be an http or https address with {coordinates} in it, such as"
              + " https://example.org/table/{coordinates}?sources={sources}&destinations={destinations}");
    }
  }

  boolean named() {
    return !template.isEmpty();
  }

  String template() {
    return template;
  }

  /**
   * Asks for the drives from the first points to the others.
   *
   * @param sources how many of the points are where drives begin
   */
  Answer ask(List<Point> points, int sources, Duration patience) throws Failed {
    byte[] body = fetch(address(points, sources), patience);
    try {
      JsonNode answer = json.readTree(body);
      int rows = sources;
      int columns = points.size() - sources;
      Double[][] seconds = matrix(answer.at(durations), rows, columns, secondsEach, durations);
      Double[][] metres =
          answer.at(distances).isMissingNode()
              ? new Double[rows][columns]
              : matrix(answer.at(distances), rows, columns, 1, distances);
      return new Answer(divided(seconds, 60), divided(metres, 1000));
    } catch (IOException e) {
      throw new Failed("the answer is no JSON");
    }
  }

  private URI address(List<Point> points, int sources) {
    String coordinates = points.stream().map(Point::lonLat).collect(Collectors.joining(";"));
    return URI.create(
        template
            .replace("{coordinates}", coordinates)
            .replace("{sources}", numbers(0, sources))
            .replace("{destinations}", numbers(sources, points.size())));
  }

  private static String numbers(int from, int to) {
    return IntStream.range(from, to).mapToObj(String::valueOf).collect(Collectors.joining(";"));
  }

  private byte[] fetch(URI address, Duration patience) throws Failed {
    HttpRequest request =
        HttpRequest.newBuilder(address).header("Accept", "application/json").GET().build();
    AtomicReference<InputStream> open = new AtomicReference<>();
    CompletableFuture<byte[]> asked =
        client
            .sendAsync(request, HttpResponse.BodyHandlers.ofInputStream())
            .thenApplyAsync(answer -> read(answer, open));
    try {
      return asked.get(Math.max(1, patience.toMillis()), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      asked.cancel(true);
      close(open.get());
      throw new Failed("it did not answer within " + patience.toMillis() + " ms");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Failed("asking was interrupted");
    } catch (ExecutionException e) {
      throw new Failed(
          e.getCause() instanceof IllegalStateException
              ? e.getCause().getMessage()
              : "it cannot be reached (" + e.getCause().getClass().getSimpleName() + ")");
    }
  }

  private static byte[] read(HttpResponse<InputStream> answer, AtomicReference<InputStream> open) {
    open.set(answer.body());
    try (InputStream body = answer.body()) {
      if (answer.statusCode() != 200) {
        throw new IllegalStateException("it answered with status " + answer.statusCode());
      }
      byte[] bytes = body.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new IllegalStateException("its answer is longer than " + MOST_BYTES + " bytes");
      }
      return bytes;
    } catch (IOException e) {
      throw new IllegalStateException("its answer broke off", e);
    }
  }

  private static void close(InputStream body) {
    try {
      if (body != null) {
        body.close();
      }
    } catch (IOException e) {
      // nobody waits for it any more
    }
  }

  private static Double[][] matrix(JsonNode node, int rows, int columns, double each, String where)
      throws Failed {
    if (!node.isArray() || node.size() != rows) {
      throw new Failed("the answer has no " + rows + " rows at " + where);
    }
    Double[][] matrix = new Double[rows][columns];
    for (int r = 0; r < rows; r++) {
      if (!node.get(r).isArray() || node.get(r).size() != columns) {
        throw new Failed("row " + (r + 1) + " at " + where + " has no " + columns + " values");
      }
      for (int c = 0; c < columns; c++) {
        matrix[r][c] = value(node.get(r).get(c), each, where);
      }
    }
    return matrix;
  }

  private static Double value(JsonNode node, double each, String where) throws Failed {
    if (node.isNull()) {
      return null;
    }
    double value = node.isNumber() ? node.asDouble() * each : Double.NaN;
    if (!(value >= 0 && value <= MOST_SECONDS * 100)) {
      throw new Failed("the value " + node + " at " + where + " cannot be");
    }
    return value;
  }

  private static Double[][] divided(Double[][] values, double by) {
    for (Double[] row : values) {
      for (int c = 0; c < row.length; c++) {
        row[c] = row[c] == null ? null : row[c] / by;
      }
    }
    return values;
  }
}
