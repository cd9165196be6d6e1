package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.FleetWiping;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page for integrators does what it says: its commands are run in their order, in one shell,
 * against the running service, and each answer it shows has the shape of the one that came.
 */
@QuarkusTest
class IntegrationPageTest {

  private static final Path PAGE = Path.of("docs", "integration.md");
  private static final Pattern BLOCK = Pattern.compile("(?ms)^```(\\w*)\\n(.*?)^```$");
  private static final String BETWEEN = "\u0001";
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;

  @Inject FleetWiping wiping;

  /**
   * A command and what the page shows of its answer.
   *
   * @param kind json or text; empty for none
   */
  private record Step(String command, String kind, String shown) {}

  private static List<Step> steps() throws Exception {
    List<Step> steps = new ArrayList<>();
    Matcher block = BLOCK.matcher(Files.readString(PAGE));
    while (block.find()) {
      String kind = block.group(1);
      Step last = steps.isEmpty() ? null : steps.get(steps.size() - 1);
      if (kind.equals("sh")) {
        steps.add(new Step(block.group(2), "", ""));
      } else if (List.of("json", "text").contains(kind) && last != null) {
        assertEquals("", last.kind(), "one answer to a command");
        steps.set(steps.size() - 1, new Step(last.command(), kind, block.group(2)));
      }
    }
    return steps;
  }

  @Test
  void whoCopiesItsCommandsInOrderSeesItsAnswers() throws Exception {
    // the page begins with nothing
    wiping.wipe();
    List<Step> steps = steps();
    assertTrue(steps.size() >= 10, "commands on the page: " + steps.size());
    List<String> answers = run(steps);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String answer = answers.get(i);
      if (step.kind().equals("json")) {
        shape("$", JSON.readTree(step.shown()), JSON.readTree(answer), faults);
      } else if (step.kind().equals("text")) {
        lines(step, answer, faults);
      }
      if (!faults.isEmpty()) {
        faults.add("command: " + step.command() + "answer: " + answer);
        break;
      }
    }
    assertEquals(List.of(), faults);
  }

  private List<String> run(List<Step> steps) throws Exception {
    StringBuilder script = new StringBuilder("set -eu\n");
    for (Step step : steps) {
      script.append(step.command()).append("printf '" + "\\001" + "'\n");
    }
    Path file = Files.writeString(folder.resolve("page.sh"), script);
    Path out = folder.resolve("out");
    ProcessBuilder shell =
        new ProcessBuilder("bash", file.toString())
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(folder.resolve("err").toFile());
    shell.environment().put("C", "http://localhost:" + RestAssured.port + "/api/v1");
    shell.environment().put("COLDROUND_TOKEN", Api.TOKEN);
    Process process = shell.start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "the commands come to an end");
    String said = Files.readString(out, StandardCharsets.UTF_8);
    assertEquals(0, process.exitValue(), said + Files.readString(folder.resolve("err")));
    return List.of(said.split(BETWEEN, -1));
  }

  /** What the page shows is there, of the same kind; it may leave out fields and items. */
  private static void shape(String place, JsonNode shown, JsonNode is, List<String> faults) {
    if (shown.getNodeType() != is.getNodeType()) {
      faults.add(place + " is shown as " + shown.getNodeType() + ", is " + is.getNodeType());
    } else if (shown.isObject()) {
      shown
          .fields()
          .forEachRemaining(
              field -> {
                JsonNode its = is.path(field.getKey());
                if (its.isMissingNode()) {
                  faults.add(place + "." + field.getKey() + " is not there");
                } else {
                  shape(place + "." + field.getKey(), field.getValue(), its, faults);
                }
              });
    } else if (shown.isArray() && !shown.isEmpty()) {
      if (is.isEmpty()) {
        faults.add(place + " is empty");
      } else {
        shape(place + "[0]", shown.get(0), is.get(0), faults);
      }
    } else if (place.matches(".*\\.(type|state|status|title|completed)")) {
      if (!shown.equals(is)) {
        faults.add(place + " is shown as " + shown + ", is " + is);
      }
    }
  }

  /** Lines are held against what comes before a figure of their own. */
  private static void lines(Step step, String answer, List<String> faults) {
    List<String> its = answer.lines().map(String::strip).toList();
    for (String line : step.shown().lines().toList()) {
      String name = line.strip().replaceAll("[0-9].*", "");
      if (its.stream().noneMatch(each -> each.startsWith(name))) {
        faults.add("no line begins with " + name);
      }
    }
  }
}
