package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.DemoLists;
import coldround.DemoServed;
import coldround.fleet.FleetWiping;
import coldround.intake.ProblemCode;
import coldround.sheet.Row;
import coldround.sheet.SheetReader;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each file of demo-data/untidy, looked at through the running service, against expected.csv. */
@QuarkusTest
@TestProfile(DemoServed.class)
class UntidyFilesTest {

  private static final Path FOLDER = Path.of("demo-data", "untidy");
  private static boolean fresh;

  @Inject FleetWiping wiping;

  @BeforeEach
  void theDemoFleet() throws IOException {
    if (!fresh) {
      DemoLists.afresh(wiping);
      fresh = true;
    }
  }

  /** One line of expected.csv: where a problem must be told, row 0 being the file as a whole. */
  private record Expected(String file, long row, String column, String code) {
    String told() {
      return row + " " + column + " " + code;
    }

    boolean rejects() {
      return ProblemCode.valueOf(code.toUpperCase(java.util.Locale.ROOT).replace('-', '_'))
          .rejects();
    }
  }

  static Stream<String> files() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      List<String> names = files.map(file -> file.getFileName().toString()).sorted().toList();
      return names.stream().filter(name -> name.endsWith(".csv") && !name.equals("expected.csv"));
    }
  }

  private static List<Expected> expected(String file) throws IOException {
    try (SheetReader rows =
        SheetReader.standard(Files.newBufferedReader(FOLDER.resolve("expected.csv")))) {
      rows.next();
      Stream.Builder<Expected> found = Stream.builder();
      while (rows.hasNext()) {
        Row row = rows.next();
        List<String> cells = row.cells();
        if (cells.get(0).equals(file)) {
          found.add(new Expected(file, Long.parseLong(cells.get(2)), cells.get(3), cells.get(4)));
        }
      }
      return found.build().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("files")
  void whatIsWrongIsToldAndTheRestIsTaken(String file) throws IOException {
    List<Expected> expected = expected(file);
    Response answer =
        asPlanner()
            .contentType("text/csv")
            .body(Files.readAllBytes(FOLDER.resolve(file)))
            .post("/api/v1/imports/" + kind(file) + "?preview=true");
    if (expected.stream().anyMatch(problem -> problem.row() == 0)) {
      assertEquals(422, answer.statusCode(), answer.asString());
      assertTrue(
          answer.path("type").toString().endsWith(expected.get(0).code()), answer.asString());
      return;
    }
    assertEquals(200, answer.statusCode(), answer.asString());
    JsonPath receipt = answer.jsonPath();
    assertEquals(new TreeSet<>(expected.stream().map(Expected::told).toList()), told(receipt));
    long rejected =
        expected.stream().filter(Expected::rejects).map(Expected::row).distinct().count();
    assertEquals(rejected, receipt.getLong("rows.rejected"), answer.asString());
  }

  private static TreeSet<String> told(JsonPath receipt) {
    TreeSet<String> told = new TreeSet<>();
    for (Map<String, Object> problem : receipt.<Map<String, Object>>getList("problems")) {
      told.add(problem.get("row") + " " + problem.get("column") + " " + problem.get("code"));
    }
    return told;
  }

  /** travel-times has a hyphen of its own, the other kinds have none. */
  private static String kind(String file) {
    return Arrays.stream(coldround.fleet.Kind.values())
        .map(coldround.fleet.Kind::code)
        .filter(file::startsWith)
        .findFirst()
        .orElseThrow();
  }
}
