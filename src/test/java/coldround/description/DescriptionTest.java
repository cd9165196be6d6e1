package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.description.Described.Call;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The description leaves nothing open: every call, parameter, answer, problem and example. */
@QuarkusTest
class DescriptionTest {

  /** Drawings, papers and pages are shown to people, who need no example; a file is kept whole. */
  private static final Set<String> FOR_EYES =
      Set.of("application/pdf", "application/zip", "image/svg+xml", "text/html");

  private final List<String> open = new ArrayList<>();

  private void want(boolean holds, String missing) {
    if (!holds) {
      open.add(missing);
    }
  }

  private static boolean isSaid(JsonNode text) {
    return text.isTextual() && !text.asText().isBlank();
  }

  // OpenAPI 3.1.0: what must be there, and what a program cannot do without
  @Test
  void everyCallTellsAllThatAClientNeeds() {
    Described described = Described.running();
    Set<String> ids = new HashSet<>();
    for (Call call : described.calls()) {
      want(!call.id().isEmpty() && ids.add(call.id()), call.path() + ": an id of its own");
      want(isSaid(call.operation().path("summary")), call + ": a summary");
      want(call.operation().path("tags").size() > 0, call + ": a tag");
      parameters(call);
      bodies(call, "requestBody", call.operation().path("requestBody"), described);
      answers(call, described);
    }
    assertEquals(List.of(), open);
  }

  private void parameters(Call call) {
    Set<String> named = new TreeSet<>();
    for (JsonNode parameter : call.operation().path("parameters")) {
      String name = parameter.path("name").asText();
      want(isSaid(parameter.path("description")), call + " " + name + ": a description");
      want(parameter.path("schema").has("type"), call + " " + name + ": a type");
      if (parameter.path("in").asText().equals("path")) {
        named.add(name);
        want(parameter.path("required").asBoolean(), call + " " + name + ": required");
      }
    }
    Set<String> inPath = new TreeSet<>();
    Matcher each = Pattern.compile("\\{(\\w+)}").matcher(call.path());
    while (each.find()) {
      inPath.add(each.group(1));
    }
    want(inPath.equals(named), call + ": parameters of its path");
  }

  private void answers(Call call, Described described) {
    boolean good = false;
    var answers = call.operation().path("responses").fields();
    while (answers.hasNext()) {
      var answer = answers.next();
      String status = answer.getKey();
      good = good || status.startsWith("2");
      want(isSaid(answer.getValue().path("description")), call + " " + status + ": a description");
      bodies(call, status, answer.getValue(), described);
      if (status.startsWith("4") || status.startsWith("5")) {
        JsonNode problem = answer.getValue().at("/content/application~1problem+json");
        want(problem.path("examples").size() > 0, call + " " + status + ": a kind of problem");
      }
    }
    want(good, call + ": an answer when all is well");
    want(call.tells(401), call + ": what happens without a token");
  }

  private void bodies(Call call, String part, JsonNode said, Described described) {
    said.path("content")
        .fields()
        .forEachRemaining(
            type -> {
              String name = call + " " + part + " " + type.getKey();
              JsonNode body = type.getValue();
              want(body.path("schema").size() > 0, name + ": a schema");
              List<JsonNode> examples = examples(body);
              want(
                  part.equals("default") || FOR_EYES.contains(type.getKey()) || !examples.isEmpty(),
                  name + ": an example");
              if (type.getKey().endsWith("json")) {
                for (JsonNode example : examples) {
                  Set<String> faults = described.faults(body.path("schema"), example);
                  want(
                      faults.isEmpty() || type.getKey().equals("application/x-ndjson"),
                      name + ": its example: " + faults);
                }
              }
            });
  }

  private static List<JsonNode> examples(JsonNode body) {
    List<JsonNode> examples = new ArrayList<>();
    if (body.has("example")) {
      examples.add(body.get("example"));
    }
    body.path("examples").forEach(each -> examples.add(each.path("value")));
    return examples;
  }

  @Test
  void everyReferenceLeadsSomewhere() {
    JsonNode document = Described.running().document();
    document
        .findValues("$ref")
        .forEach(
            reference ->
                want(
                    !document.at(reference.asText().substring(1)).isMissingNode(),
                    reference.asText()));
    assertEquals(List.of(), open);
  }

  /** In the sources a kind of problem is the word behind its status. */
  @Test
  void everyKindOfProblemIsTold() throws IOException {
    JsonNode told =
        new ObjectMapper().readTree(Path.of("src/main/resources/openapi/problems.json").toFile());
    Pattern kind =
        Pattern.compile(
            "(?:new Problem\\(\\s*\\d+,\\s*|Problem\\.unprocessable\\(\\s*)\"([a-z-]+)\"");
    Set<String> missing = new TreeSet<>();
    int found = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
        Matcher each = kind.matcher(Files.readString(file));
        while (each.find()) {
          found++;
          if (!told.has(each.group(1))) {
            missing.add(each.group(1));
          }
        }
      }
    }
    assertEquals(Set.of(), missing, "not in openapi/problems.json");
    want(found > 15, "kinds of problem in the sources, found " + found);
    assertEquals(List.of(), open);
  }
}
