package coldround;

import static org.hamcrest.Matchers.equalTo;

import coldround.fleet.FleetWiping;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The demo fleet as a caller would read it in, so that tests of one service can follow others. */
public final class DemoLists {

  private static final List<String> LISTS =
      List.of(
          "customers",
          "sites",
          "units",
          "visits",
          "readings",
          "faults",
          "technicians",
          "travel-times");

  private DemoLists() {}

  /** The demo fleet and nothing else of a fleet, whatever was there. */
  public static void afresh(FleetWiping wiping) throws IOException {
    wiping.wipe();
    for (String kind : LISTS) {
      Api.asPlanner()
          .contentType("text/csv")
          .body(Files.readAllBytes(Path.of("demo-data", kind + ".csv")))
          .post("/api/v1/imports/" + kind)
          .then()
          .statusCode(200)
          .body("rows.rejected", equalTo(0));
    }
  }
}
