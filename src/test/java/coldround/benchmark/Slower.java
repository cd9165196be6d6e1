package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * {@code slower EARLIER NOW}: names the figures of two files of {@code all} whose median became
 * worse by 15 % or more. Programs that were not run on both sides are left out.
 */
final class Slower implements Benchmarks.Program {

  private static final double PERCENT = 15;
  private static final ObjectMapper JSON = new ObjectMapper();

  @Override
  public void run(String... arguments) throws IOException {
    if (arguments.length != 2) {
      throw new IllegalArgumentException("slower EARLIER NOW, two files that all has written");
    }
    JsonNode earlier = JSON.readTree(Files.readString(Path.of(arguments[0])));
    JsonNode now = JSON.readTree(Files.readString(Path.of(arguments[1])));
    List<String> worse = worse(Figure.all(now.path("size").asText()), earlier, now);
    worse.forEach(System.out::println);
    System.out.println(JSON.writeValueAsString(Map.of("worse", worse.size())));
  }

  /** A sentence for each figure that became worse. */
  static List<String> worse(List<Figure> figures, JsonNode earlier, JsonNode now) {
    return figures.stream()
        .filter(figure -> median(earlier, figure) > 0 && median(now, figure) > 0)
        .filter(
            figure -> figure.worsePercent(median(now, figure), median(earlier, figure)) >= PERCENT)
        .map(
            figure ->
                String.format(
                    Locale.ROOT,
                    "%s: %s was %.3f and is %.3f, %.0f %% worse",
                    figure.command(),
                    figure.meaning(),
                    median(earlier, figure),
                    median(now, figure),
                    figure.worsePercent(median(now, figure), median(earlier, figure))))
        .toList();
  }

  /** 0 where there is none. */
  private static double median(JsonNode all, Figure figure) {
    return all.path("figures").path(figure.name()).path("median").asDouble();
  }
}
