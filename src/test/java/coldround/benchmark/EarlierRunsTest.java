package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EarlierRunsTest {

  @TempDir Path folder;

  private static JsonNode run(int seconds) {
    return JsonNodeFactory.instance.objectNode().put("seconds", seconds);
  }

  @Test
  void whoComesBackFindsTheRunsByTheirCommand() throws IOException {
    Path file = folder.resolve("figures.json.runs");
    EarlierRuns first = new EarlierRuns(file, "a");
    first.add("start", run(3));
    first.add("score 10 20", run(5));
    first.add("start", run(4));
    EarlierRuns second = new EarlierRuns(file, "a");
    assertEquals(List.of(run(3), run(4)), second.of("start"));
    assertEquals(List.of(run(5)), second.of("score 10 20"));
    assertTrue(second.of("score 10 20 postgresql").isEmpty());
  }

  @Test
  void runsOfOtherClassesAreNotMixedIn() throws IOException {
    Path file = folder.resolve("figures.json.runs");
    new EarlierRuns(file, "a").add("start", run(3));
    assertThrows(IllegalArgumentException.class, () -> new EarlierRuns(file, "b"));
  }

  @Test
  void withoutAFileNothingIsKept() throws IOException {
    EarlierRuns runs = new EarlierRuns(null, "");
    runs.add("start", run(3));
    assertEquals(1, runs.of("start").size());
  }
}
