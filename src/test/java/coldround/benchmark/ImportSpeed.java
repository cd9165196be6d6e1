package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * {@code import [ROWS] [postgresql]}: visit rows of about 12 readings sent to the built service in
 * a heap of 512 MB, beside their floor in the same run: OpenCSV parsing alone plus plain JDBC batch
 * insert of the same cells into the same kind of database.
 */
final class ImportSpeed implements Benchmarks.Program {

  // as docs/deployment.md advises for such logs
  private static final String COLLECTOR = "-XX:+UseParallelGC";

  private static final int DEFAULT_ROWS = 100_000;

  private int rows;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("import [ROWS] [postgresql]", 0, 1, arguments);
    rows = asked.number(0, DEFAULT_ROWS);
    VisitFile fleet = new VisitFile(rows);
    Path file = Files.createTempFile("visits", ".csv");
    try (Store store = Store.of(asked.store())) {
      fleet.writeVisits(file);
      System.out.printf("%-44s %10s %12s%n", "", "seconds", "rows/s");
      tell("OpenCSV parsing alone", ImportFloor.parse(file));
      double floor = ImportFloor.insert(file, store.url("floor"));
      tell("floor: OpenCSV and JDBC batch insert", floor);
      measure(store, fleet, file, floor);
    } finally {
      Files.delete(file);
    }
  }

  private void measure(Store store, VisitFile fleet, Path file, double floor) throws Exception {
    try (BuiltService service = BuiltService.start("512m", store, COLLECTOR)) {
      service.upload("customers", BodyPublishers.ofString(fleet.customers()));
      service.upload("sites", BodyPublishers.ofString(fleet.sitesText()));
      service.upload("units", BodyPublishers.ofString(fleet.unitsText()));
      Taken applied = upload(service, file, "created");
      tell("rows read, checked, merged, written", applied.reading());
      tell("units they belong to assessed", applied.assessing());
      tell("all of it committed", applied.committing());
      tell("applied: all together", applied.seconds());
      Taken again = upload(service, file, "unchanged");
      tell("sent once more, nothing changed", again.seconds());
      long peak = service.peakMegabytes();
      System.out.printf("%-44s %10d MB%n", "most memory of the process, heap 512 MB", peak);
      System.out.printf(
          Locale.ROOT,
          "{\"rows\":%d,\"bytes\":%d,\"floorSeconds\":%.2f,\"seconds\":%.2f,\"ratio\":%.3f,"
              + "\"readingSeconds\":%.2f,\"assessingSeconds\":%.2f,\"committingSeconds\":%.2f,"
              + "\"storedSeconds\":%.2f,\"againSeconds\":%.2f,"
              + "\"peakMegabytes\":%d}%n",
          rows,
          Files.size(file),
          floor,
          applied.seconds(),
          applied.seconds() / floor,
          applied.reading(),
          applied.assessing(),
          applied.committing(),
          applied.stored(),
          again.seconds(),
          peak);
    }
  }

  /** Seconds of an import. */
  private record Taken(double reading, double assessing, double committing) {
    /** Rows alone; the commit is counted whole, though what was assessed has a part in it. */
    double stored() {
      return reading + committing;
    }

    double seconds() {
      return reading + assessing + committing;
    }
  }

  /** Hands the file over and asks how far it is until there is the receipt. */
  private Taken upload(BuiltService service, Path file, String expected) throws Exception {
    long start = System.nanoTime();
    String place = service.handOver("visits", BodyPublishers.ofFile(file));
    long read = 0;
    long assessed = 0;
    JsonNode now = ask(service, place);
    while (now.has("progress")) {
      if (read == 0 && now.path("state").asText().equals("assessing")) {
        read = System.nanoTime();
      }
      if (assessed == 0 && read > 0 && now.at("/progress/share").asDouble() == 1) {
        assessed = System.nanoTime();
      }
      Thread.sleep(50);
      now = ask(service, place);
    }
    long end = System.nanoTime();
    if (now.path("rows").path(expected).asLong() != rows) {
      throw new IllegalStateException("not all rows are " + expected + ": " + now);
    }
    read = read == 0 ? end : read;
    assessed = assessed == 0 ? end : assessed;
    return new Taken((read - start) / 1e9, (assessed - read) / 1e9, (end - assessed) / 1e9);
  }

  private static JsonNode ask(BuiltService service, String place) throws Exception {
    return new ObjectMapper().readTree(service.get(place));
  }

  private void tell(String what, double seconds) {
    System.out.printf(Locale.ROOT, "%-44s %10.2f %12.0f%n", what, seconds, rows / seconds);
  }
}
