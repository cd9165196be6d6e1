package coldround.rounds;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/** Spans of time of round-costs.csv, read as plain text. */
final class FiguresByHand {

  private final Map<String, Double> minutes = new HashMap<>();

  FiguresByHand() {
    try {
      for (String line : Files.readAllLines(Path.of("scoring", "round-costs.csv"))) {
        String[] cells = line.split(",");
        switch (cells[2]) {
          case "min" -> minutes.put(cells[0], Double.parseDouble(cells[1]));
          case "h" -> minutes.put(cells[0], 60 * Double.parseDouble(cells[1]));
          default -> {
            // the heading, and what is no span of the day
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  double minutes(String figure) {
    return minutes.get(figure);
  }
}
