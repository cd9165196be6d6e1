package coldround.benchmark;

import coldround.sheet.Row;
import coldround.sheet.SheetReader;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * {@code csv-score CLEAN PARAMETERS OUT [WEIGHTS]}: the measure of the Pollock data-loading
 * benchmark (Vitagliano and others, VLDB 2023) on converted files. The score of a file is the sum
 * of success and of precision, recall and F1 of header, records and cells, ten figures between 0
 * and 1.
 *
 * <p>Where its description leaves the details open, this is our reading: labels of the header,
 * whole records and single cells are compared as multisets of exact strings; records and cells
 * leave the header out; the header is the first record if the parameters give one or more header
 * lines, else there is none and its three figures are 1; two empty multisets agree; a missing file
 * scores 0.
 */
final class CsvScore implements Benchmarks.Program {

  private static final int WORST = 15;

  private record Scored(String file, double score, double weight) {}

  private final ObjectMapper json = new ObjectMapper();

  @Override
  public void run(String... arguments) throws IOException {
    if (arguments.length < 3) {
      throw new IllegalArgumentException("csv-score CLEAN PARAMETERS OUT [WEIGHTS]");
    }
    Path clean = Path.of(arguments[0]);
    JsonNode weights = arguments.length > 3 ? json.readTree(Path.of(arguments[3]).toFile()) : null;
    List<Scored> scores = new ArrayList<>();
    try (var files = Files.list(clean)) {
      for (Path file : files.sorted().toList()) {
        String name = file.getFileName().toString();
        double score = score(file, Path.of(arguments[1]), Path.of(arguments[2]));
        double weight = weights == null ? 0 : weights.path(name).asDouble(0);
        scores.add(new Scored(name, score, weight));
      }
    }
    print(scores);
  }

  private static void print(List<Scored> scores) {
    scores.stream()
        .sorted(Comparator.comparingDouble(Scored::score))
        .limit(WORST)
        .forEach(s -> System.out.printf("%7.3f  %10.3f  %s%n", s.score, s.weight, s.file));
    double simple = scores.stream().mapToDouble(Scored::score).average().orElse(0);
    double weight = scores.stream().mapToDouble(Scored::weight).sum();
    double sum = scores.stream().mapToDouble(s -> s.score * s.weight).sum();
    String weighted = weight == 0 ? "null" : String.format("%.4f", sum / weight);
    System.out.printf(
        "{\"files\":%d,\"simple\":%.4f,\"weighted\":%s}%n", scores.size(), simple, weighted);
  }

  private double score(Path clean, Path parameters, Path out) throws IOException {
    String name = clean.getFileName().toString();
    Path converted = out.resolve(name + "_converted.csv");
    if (!Files.exists(converted)) {
      return 0;
    }
    JsonNode given = json.readTree(parameters.resolve(name + "_parameters.json").toFile());
    int header = given.path("header_lines").asInt(0) > 0 ? 1 : 0;
    return 1
        + compare(cells(head(clean, header)), cells(head(converted, header)))
        + compare(body(clean, header), body(converted, header))
        + compare(cells(body(clean, header)), cells(body(converted, header)));
  }

  private static List<List<String>> head(Path file, int header) throws IOException {
    List<List<String>> rows = rows(file);
    return rows.subList(0, Math.min(header, rows.size()));
  }

  private static List<List<String>> body(Path file, int header) throws IOException {
    List<List<String>> rows = rows(file);
    return rows.subList(Math.min(header, rows.size()), rows.size());
  }

  private static List<List<String>> rows(Path file) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    try (Reader text = Files.newBufferedReader(file);
        SheetReader reader = SheetReader.standard(text)) {
      while (reader.hasNext()) {
        Row row = reader.next();
        rows.add(row.cells());
      }
    }
    return rows;
  }

  private static List<String> cells(List<List<String>> rows) {
    return rows.stream().flatMap(List::stream).toList();
  }

  /** Precision, recall and F1 of {@code got} against {@code expected}, added up. */
  private static double compare(List<?> expected, List<?> got) {
    if (expected.isEmpty() && got.isEmpty()) {
      return 3;
    }
    double shared = shared(expected, got);
    double precision = got.isEmpty() ? 0 : shared / got.size();
    double recall = expected.isEmpty() ? 0 : shared / expected.size();
    double f1 = shared == 0 ? 0 : 2 * precision * recall / (precision + recall);
    return precision + recall + f1;
  }

  private static int shared(List<?> expected, List<?> got) {
    Map<Object, Integer> counts = new HashMap<>();
    expected.forEach(e -> counts.merge(e, 1, Integer::sum));
    int shared = 0;
    for (Object one : got) {
      shared += counts.merge(one, -1, Integer::sum) >= 0 ? 1 : 0;
    }
    return shared;
  }
}
