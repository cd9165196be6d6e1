package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The description that is published with the sources is that of the running service, and a new one
 * breaks no program that was made from it.
 */
@QuarkusTest
class PublishedDescriptionTest {

  private static final Path FILE = Path.of("docs", "openapi.json");
  private static final boolean PUBLISH = Boolean.getBoolean("coldround.publish");
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  @Test
  void theRunningServiceKeepsWhatIsPublished() throws IOException {
    JsonNode running = Described.running().document();
    JsonNode published = Files.exists(FILE) ? JSON.readTree(FILE.toFile()) : null;
    if (published != null && !Breaks.areAllowed(published, running)) {
      assertEquals(
          List.of(),
          Breaks.between(published, running),
          "this breaks programs made from docs/openapi.json. Mend it, or raise"
              + " quarkus.smallrye-openapi.info-version (the major number, or the minor one while"
              + " the major is 0) and publish");
    }
    if (PUBLISH) {
      Files.writeString(FILE, JSON.writeValueAsString(running) + "\n");
    } else if (published == null || !published.equals(running)) {
      fail(
          "docs/openapi.json is not that of this service: "
              + differences(published, running)
              + ". No published promise is broken. Publish it: bash .ci/publish-description");
    }
  }

  private static String differences(JsonNode published, JsonNode running) {
    if (published == null) {
      return "there is none";
    }
    StringBuilder text = new StringBuilder();
    running
        .path("paths")
        .fields()
        .forEachRemaining(
            path -> {
              if (!path.getValue().equals(published.path("paths").path(path.getKey()))) {
                text.append(path.getKey()).append(' ');
              }
            });
    return text.isEmpty() ? "schemas or what is said of all" : text.toString().strip();
  }

  @Test
  void whoMayReadNothingElseMayReadTheDescription() {
    assertTrue(Described.running().document().path("openapi").asText().startsWith("3.1"));
  }
}
