package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * {@code all [full|small [ROUNDS [FILE]]]}: every program that benchmarks/figures.csv names, each
 * in a process of its own and as often as it takes for so many rounds, since some measure several
 * of them themselves; as one table of medians with least and greatest, and as JSON, which is
 * written to the file too. What a program prints itself goes to the error output. What is measured
 * is kept beside the file: the same command goes on where it was ended, and with 0 rounds tells of
 * those there are.
 */
final class AllFigures implements Benchmarks.Program {

  private static final String ROUNDS = "5";
  private static final ObjectMapper JSON = new ObjectMapper();

  @Override
  public void run(String... arguments) throws Exception {
    String size = arguments.length > 0 ? arguments[0] : "full";
    String rounds = arguments.length > 1 ? arguments[1] : ROUNDS;
    if (!List.of("full", "small").contains(size)
        || !rounds.matches("[0-9]{1,3}")
        || arguments.length > 3) {
      throw new IllegalArgumentException(
          "all [full|small [ROUNDS [FILE]]]; ROUNDS is 0 to 999, 0 tells of what FILE has");
    }
    Path file = arguments.length == 3 ? Path.of(arguments[2]) : null;
    List<Figure> figures = Figure.all(size);
    Set<String> commands =
        figures.stream().map(Figure::command).collect(Collectors.toCollection(LinkedHashSet::new));
    Builds.check(commands);
    Path kept = file == null ? null : file.resolveSibling(file.getFileName() + ".runs");
    EarlierRuns printed = new EarlierRuns(kept, kept == null ? "" : Builds.classes());
    int wanted = Integer.parseInt(rounds);
    for (String command : commands) {
      List<Figure> its = figures.stream().filter(each -> each.command().equals(command)).toList();
      for (int done = rounds(its, printed); done < wanted; done = rounds(its, printed)) {
        System.err.printf("# %s, %d of %d rounds done%n", command, done, wanted);
        printed.add(command, once(command));
      }
    }
    ObjectNode all = JSON.createObjectNode();
    all.put("size", size).put("rounds", wanted).put("java", System.getProperty("java.version"));
    all.put("processors", Runtime.getRuntime().availableProcessors());
    ObjectNode measured = all.putObject("figures");
    FigureTable table = new FigureTable();
    for (Figure figure : figures) {
      if (!printed.of(figure.command()).isEmpty()) {
        Spread spread = Spread.of(values(figure, printed));
        table.add(figure, spread);
        measured.putPOJO(figure.name(), spread);
      }
    }
    System.out.print(table);
    if (file != null) {
      String text = JSON.writerWithDefaultPrettyPrinter().writeValueAsString(all);
      Files.writeString(file, text + "\n");
    }
    System.out.println(JSON.writeValueAsString(all));
  }

  /** Of the figure of a command that there are most values of; the others come with it. */
  private static int rounds(List<Figure> figures, EarlierRuns printed) {
    return figures.stream().mapToInt(each -> values(each, printed).length).max().orElse(0);
  }

  private static double[] values(Figure figure, EarlierRuns printed) {
    return printed.of(figure.command()).stream()
        .flatMapToDouble(each -> Arrays.stream(figure.in(each)))
        .toArray();
  }

  /** The JSON object that a program printed last. */
  private static JsonNode once(String command) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(List.of("-cp", Benchmarks.classpath(), Benchmarks.class.getName()));
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
}
