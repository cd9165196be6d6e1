package coldround.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What can be said of the image without building it. */
class ContainerFileTest {

  private static List<String> lines() throws IOException {
    String text = Files.readString(Path.of("src", "main", "docker", "Containerfile"));
    return text.replace("\\\n", "").lines().filter(line -> !line.startsWith("#")).toList();
  }

  private static List<String> arguments(String instruction) throws IOException {
    return lines().stream()
        .filter(line -> line.startsWith(instruction + " "))
        .map(line -> line.substring(instruction.length() + 1).strip())
        .toList();
  }

  @Test
  void itRunsAsAUserWhoIsNotRootAndIsNamedByNumber() throws IOException {
    List<String> users = arguments("USER");
    assertEquals(List.of("10001:10001"), users);
    List<String> lines = lines();
    int user = lines.indexOf("USER 10001:10001");
    assertTrue(
        lines.subList(user, lines.size()).stream().noneMatch(line -> line.startsWith("RUN ")));
    assertTrue(user < lines.indexOf("VOLUME /data"));
  }

  @Test
  void itTakesTheWholeBuildAndWhatItTakesBelongsToRoot() throws IOException {
    Set<String> taken =
        arguments("COPY").stream()
            .map(line -> line.split(" ")[0].replace("target/quarkus-app/", ""))
            .collect(Collectors.toSet());
    assertEquals(Set.of("lib/", "quarkus-run.jar", "quarkus/", "app/"), taken);
    assertTrue(arguments("COPY").stream().noneMatch(line -> line.contains("--chown")));
  }

  @Test
  void itHoldsNoSecretAndOpensNothingByItself() throws IOException {
    String all = String.join("\n", lines());
    assertFalse(all.contains("TOKEN"));
    assertFalse(all.contains("PLAIN_HTTP"), "plain HTTP has to be meant by who runs it");
    assertFalse(arguments("FROM").get(0).endsWith(":latest"));
  }
}
