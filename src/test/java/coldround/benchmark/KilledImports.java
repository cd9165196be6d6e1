package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/**
 * {@code import-killed ROUNDS ROWS}: sends visits to the built service and kills its process (kill
 * -9) at a random moment of the import, starts it again on the same data, and sends the file once
 * more. After each kill the store must be as before the file or as after it; after the second
 * upload every row must be there once.
 */
final class KilledImports implements Benchmarks.Program {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int DEFAULT_ROUNDS = 10;
  private static final int DEFAULT_ROWS = 20_000;

  private int rows;
  private int old;
  private int whole;

  @Override
  public void run(String... arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : DEFAULT_ROUNDS;
    rows = arguments.length > 1 ? Integer.parseInt(arguments[1]) : DEFAULT_ROWS;
    Path file = Files.createTempFile("visits", ".csv");
    VisitFile fleet = new VisitFile(rows);
    try {
      fleet.writeVisits(file);
      long usual = undisturbed(fleet, file);
      Random random = new Random(1);
      System.out.printf(
          "%-8s %16s %14s %10s %10s%n", "round", "killed after", "then", "created", "same");
      for (int i = 1; i <= rounds; i++) {
        round(i, fleet, file, Math.round(usual * random.nextDouble()));
      }
      System.out.printf(
          "{\"rounds\":%d,\"rows\":%d,\"oldState\":%d,\"wholeState\":%d,\"duplicates\":0}%n",
          rounds, rows, old, whole);
    } finally {
      Files.delete(file);
    }
  }

  /** Milliseconds that the file takes when nothing happens. */
  private long undisturbed(VisitFile fleet, Path file) throws Exception {
    try (Store store = Store.of(Store.Kind.H2);
        BuiltService service = filled(store, fleet)) {
      long start = System.nanoTime();
      service.upload("visits", BodyPublishers.ofFile(file));
      return (System.nanoTime() - start) / 1_000_000;
    }
  }

  private static BuiltService filled(Store store, VisitFile fleet) throws Exception {
    BuiltService service = BuiltService.start("512m", store);
    service.upload("customers", BodyPublishers.ofString(fleet.customers()));
    service.upload("sites", BodyPublishers.ofString(fleet.sitesText()));
    service.upload("units", BodyPublishers.ofString(fleet.unitsText()));
    return service;
  }

  private void round(int number, VisitFile fleet, Path file, long after) throws Exception {
    try (Store store = Store.of(Store.Kind.H2)) {
      killed(store, fleet, file, after);
      try (BuiltService service = BuiltService.start("512m", store)) {
        // the preview counts what is there and changes nothing
        JsonNode there = counts(service, file, "visits?preview=true");
        check(
            "the state after the kill",
            there,
            there.path("created").asInt() == rows || same(there));
        JsonNode second = counts(service, file, "visits");
        check("the second upload", second, second.equals(there));
        JsonNode third = counts(service, file, "visits");
        check("the third upload", third, same(third));
        boolean isOld = there.path("created").asInt() == rows;
        old += isOld ? 1 : 0;
        whole += isOld ? 0 : 1;
        System.out.printf(
            "%-8d %13d ms %14s %10d %10d%n",
            number,
            after,
            isOld ? "old state" : "whole file",
            second.path("created").asInt(),
            second.path("unchanged").asInt());
      }
    }
  }

  private boolean same(JsonNode counts) {
    return counts.path("unchanged").asInt() == rows;
  }

  private static void killed(Store store, VisitFile fleet, Path file, long after) throws Exception {
    BuiltService service = filled(store, fleet);
    CompletableFuture<String> upload =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                return service.upload("visits", BodyPublishers.ofFile(file));
              } catch (IOException | InterruptedException e) {
                throw new CompletionException(e);
              }
            });
    Thread.sleep(after);
    service.kill();
    try {
      upload.join();
    } catch (CompletionException e) {
      // the connection broke, as it must
    }
  }

  private static JsonNode counts(BuiltService service, Path file, String address) throws Exception {
    return JSON.readTree(service.upload(address, BodyPublishers.ofFile(file))).path("rows");
  }

  private static void check(String what, JsonNode counts, boolean holds) {
    if (!holds) {
      throw new IllegalStateException(what + " is neither the old state nor the whole: " + counts);
    }
  }
}
