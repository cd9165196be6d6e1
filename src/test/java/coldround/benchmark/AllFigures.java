package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * {@code all [full|small [RUNS [FILE]]]}: every program that benchmarks/figures.csv names, each run
 * several times in a process of its own, as one table of medians with least and greatest, and as
 * JSON, which is written to the file too. What a program prints itself goes to the error output.
 * Runs are kept beside the file: the same command goes on where it was ended, and with 0 runs tells
 * of those there are.
 */
final class AllFigures implements Benchmarks.Program {

  private static final int RUNS = 5;
  private static final ObjectMapper JSON = new ObjectMapper();

  @Override
  public void run(String... arguments) throws Exception {
    String size = arguments.length > 0 ? arguments[0] : "full";
    int runs = arguments.length > 1 ? Integer.parseInt(arguments[1]) : RUNS;
    if (!List.of("full", "small").contains(size) || runs < 0 || arguments.length > 3) {
      throw new IllegalArgumentException("all [full|small [RUNS [FILE]]]");
    }
    Path file = arguments.length == 3 ? Path.of(arguments[2]) : null;
    List<Figure> figures = Figure.all(size);
    Set<String> commands =
        figures.stream().map(Figure::command).collect(Collectors.toCollection(LinkedHashSet::new));
    Builds.check(commands);
    Path kept = file == null ? null : file.resolveSibling(file.getFileName() + ".runs");
    EarlierRuns printed = new EarlierRuns(kept, kept == null ? "" : Builds.classes());
    for (String command : commands) {
      for (int run = printed.of(command).size() + 1; run <= runs; run++) {
        System.err.printf("# %s, run %d of %d%n", command, run, runs);
        printed.add(command, once(command));
      }
    }
    ObjectNode all = JSON.createObjectNode();
    all.put("size", size).put("runs", runs).put("java", System.getProperty("java.version"));
    all.put("processors", Runtime.getRuntime().availableProcessors());
    ObjectNode its = all.putObject("figures");
    System.out.println("| command | figure | median | least | greatest | goal | |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (Figure figure : figures) {
      if (!printed.of(figure.command()).isEmpty()) {
        tell(figure, printed.of(figure.command()), its);
      }
    }
    if (file != null) {
      String text = JSON.writerWithDefaultPrettyPrinter().writeValueAsString(all);
      Files.writeString(file, text + "\n");
    }
    System.out.println(JSON.writeValueAsString(all));
  }

  /** The JSON object that a program printed last. */
  private static JsonNode once(String command) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(List.of("-cp", classpath(), Benchmarks.class.getName()));
    line.addAll(Arrays.asList(command.split(" ")));
    Process process =
        new ProcessBuilder(line).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    String last = "";
    try (BufferedReader output = process.inputReader()) {
      for (String text = output.readLine(); text != null; text = output.readLine()) {
        System.err.println(text);
        last = text.isBlank() ? last : text;
      }
    }
    if (process.waitFor() != 0 || !last.startsWith("{")) {
      throw new IllegalStateException(command + " ended without figures");
    }
    return JSON.readTree(last);
  }

  /** Of this program; Maven runs it from a loader of its own. */
  private static String classpath() {
    return AllFigures.class.getClassLoader() instanceof URLClassLoader loader
        ? Arrays.stream(loader.getURLs())
            .map(URL::getPath)
            .collect(Collectors.joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  private static void tell(Figure figure, List<JsonNode> printed, ObjectNode all) {
    double[] sorted = printed.stream().mapToDouble(figure::in).sorted().toArray();
    double median = sorted[sorted.length / 2];
    System.out.printf(
        Locale.ROOT,
        "| `%s` | %s | %s | %s | %s | %s | %s |%n",
        figure.command(),
        figure.meaning(),
        text(median),
        text(sorted[0]),
        text(sorted[sorted.length - 1]),
        figure.goal().isEmpty() ? "" : text(figure.goal().getAsDouble()),
        figure.reached(median) ? "" : "not reached");
    all.putObject(figure.name())
        .put("median", median)
        .put("least", sorted[0])
        .put("greatest", sorted[sorted.length - 1]);
  }

  private static String text(double value) {
    return String.format(Locale.ROOT, value >= 100 ? "%.0f" : value >= 10 ? "%.1f" : "%.2f", value);
  }
}
