package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * {@code import ROWS}: visit rows of about 12 readings sent to the built service in a heap of 512
 * MB, beside their floor in the same run: OpenCSV parsing alone plus plain JDBC batch insert of the
 * same cells into a database file.
 */
final class ImportSpeed implements Benchmarks.Program {

  private static final int DEFAULT_ROWS = 100_000;

  private int rows;

  @Override
  public void run(String... arguments) throws Exception {
    rows = arguments.length == 0 ? DEFAULT_ROWS : Integer.parseInt(arguments[0]);
    VisitFile fleet = new VisitFile(rows);
    Path file = Files.createTempFile("visits", ".csv");
    try {
      fleet.writeVisits(file);
      System.out.printf("%-44s %10s %12s%n", "", "seconds", "rows/s");
      tell("OpenCSV parsing alone", ImportFloor.parse(file));
      double floor = ImportFloor.insert(file);
      tell("floor: OpenCSV and JDBC batch insert", floor);
      measure(fleet, file, floor);
    } finally {
      Files.delete(file);
    }
  }

  private void measure(VisitFile fleet, Path file, double floor) throws Exception {
    try (BuiltService service = BuiltService.start("512m")) {
      service.upload("customers", BodyPublishers.ofString(fleet.customers()));
      service.upload("sites", BodyPublishers.ofString(fleet.sitesText()));
      service.upload("units", BodyPublishers.ofString(fleet.unitsText()));
      double preview = upload(service, file, "visits?preview=true", "created");
      tell("preview: read, checked, merged, rolled back", preview);
      double applied = upload(service, file, "visits", "created");
      tell("applied: the same, kept, units assessed", applied);
      double again = upload(service, file, "visits", "unchanged");
      tell("sent once more, nothing changed", again);
      long peak = service.peakMegabytes();
      System.out.printf("%-44s %10d MB%n", "most memory of the process, heap 512 MB", peak);
      System.out.printf(
          "{\"rows\":%d,\"bytes\":%d,\"floorSeconds\":%.2f,\"seconds\":%.2f,\"ratio\":%.3f,"
              + "\"previewSeconds\":%.2f,\"againSeconds\":%.2f,\"peakMegabytes\":%d}%n",
          rows, Files.size(file), floor, applied, applied / floor, preview, again, peak);
    }
  }

  private double upload(BuiltService service, Path file, String address, String expected)
      throws Exception {
    long start = System.nanoTime();
    String receipt = service.upload(address, BodyPublishers.ofFile(file));
    double seconds = (System.nanoTime() - start) / 1e9;
    JsonNode counts = new ObjectMapper().readTree(receipt).path("rows");
    if (counts.path(expected).asLong() != rows) {
      throw new IllegalStateException("not all rows are " + expected + ": " + counts);
    }
    return seconds;
  }

  private void tell(String what, double seconds) {
    System.out.printf("%-44s %10.2f %12.0f%n", what, seconds, rows / seconds);
  }
}
