package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What programs have printed, kept run by run, so that hours of them may end at any moment and go
 * on another day. The first line of the file says of which classes, each further one is a run.
 */
final class EarlierRuns {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Path file;
  private final Map<String, List<JsonNode>> printed = new LinkedHashMap<>();

  /**
   * @param file null where nothing is to be kept; need not be there
   * @param classes what tells the classes that are measured from others
   * @throws IllegalArgumentException when the file has runs of other classes
   */
  EarlierRuns(Path file, String classes) throws IOException {
    this.file = file;
    if (file == null) {
      return;
    }
    if (!Files.exists(file)) {
      Files.writeString(file, JSON.writeValueAsString(Map.of("classes", classes)) + "\n");
      return;
    }
    List<String> lines = Files.readAllLines(file);
    if (!JSON.readTree(lines.get(0)).path("classes").asText().equals(classes)) {
      throw new IllegalArgumentException(
          file + " has runs of another build. Remove it to begin anew.");
    }
    for (String line : lines.subList(1, lines.size())) {
      JsonNode run = JSON.readTree(line);
      of(run.path("command").asText()).add(run.path("printed"));
    }
  }

  /** All runs of the command, those before included. */
  List<JsonNode> of(String command) {
    return printed.computeIfAbsent(command, its -> new ArrayList<>());
  }

  void add(String command, JsonNode run) throws IOException {
    of(command).add(run);
    if (file != null) {
      String line = JSON.writeValueAsString(Map.of("command", command, "printed", run)) + "\n";
      Files.writeString(file, line, StandardOpenOption.APPEND);
    }
  }
}
