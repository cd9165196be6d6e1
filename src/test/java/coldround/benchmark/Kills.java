package coldround.benchmark;

import coldround.benchmark.KillHarms.Bookings;
import coldround.benchmark.KillHarms.Import;
import coldround.benchmark.KillHarms.Planning;
import coldround.benchmark.KillHarms.Reassessment;
import coldround.benchmark.KillHarms.Visits;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

/**
 * {@code kills ROUNDS [h2|postgresql] [SEED]}: kills the built service (kill -9) at random moments
 * of an import, of visits coming in, of the fleet being scored anew, of rounds being planned and of
 * web hooks being delivered, all on one store, and looks after each start whether what was answered
 * is there, nothing is there twice and nothing by half.
 */
public final class Kills implements Benchmarks.Program {

  private final Map<String, Integer> rounds = new TreeMap<>();

  @Override
  public void run(String... arguments) throws Exception {
    int wanted = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
    String kind = arguments.length > 1 ? arguments[1] : "h2";
    long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
    try (Store store = Store.of(Store.Kind.of(kind));
        Inbox inbox = new Inbox()) {
      kill(store, inbox, wanted, new Random(seed));
      System.out.printf(
          "{\"kills\":%d,\"store\":\"%s\",\"seed\":%d,\"by\":\"%s\",\"hooks\":%d,\"hooksAgain\":%d,\"lost\":0,\"twice\":0}%n",
          wanted, kind, seed, rounds, inbox.ids().size(), inbox.again().size());
    }
  }

  private void kill(Store store, Inbox inbox, int wanted, Random random) throws Exception {
    Reassessment reassessment = new Reassessment(store.folder.resolve("scoring"));
    KillableService service = KillableService.start(store, reassessment.environment());
    try {
      subscribe(service, inbox);
      for (int i = 1; i <= wanted; i++) {
        Harm harm =
            switch (i % 5) {
              case 1 -> new Import(i);
              case 2 -> new Visits(i);
              case 3 -> new Planning(i);
              case 4 -> new Bookings(i, random);
              default -> reassessment;
            };
        int after = random.nextInt(harm.longest());
        service = killed(store, service, harm, reassessment, after);
        noHalfFile(store, service);
        String found = harm.check(service);
        rounds.merge(harm.name(), 1, Integer::sum);
        System.out.printf("%-4d %-14s killed after %5d ms: %s%n", i, harm.name(), after, found);
      }
      told(service, inbox);
    } finally {
      service.close();
    }
  }

  private static KillableService killed(
      Store store, KillableService running, Harm harm, Reassessment reassessment, int after)
      throws Exception {
    KillableService service = running;
    if (harm == reassessment) {
      // scored anew when it starts with other tables
      service.stop();
      reassessment.change();
      service = KillableService.launch(store, reassessment.environment());
    } else {
      harm.prepare(service);
    }
    KillableService victim = service;
    CompletableFuture<Void> work =
        CompletableFuture.runAsync(
            () -> {
              try {
                harm.work(victim);
              } catch (IOException e) {
                // the connection broke, as it must
              } catch (Exception e) {
                throw new IllegalStateException(e);
              }
            });
    Thread.sleep(after);
    victim.kill();
    work.join();
    return KillableService.start(store, reassessment.environment());
  }

  /** Files of a service that was killed are cleared away by the one after it. */
  private static void noHalfFile(Store store, KillableService service) throws IOException {
    List<String> left = new ArrayList<>();
    try (Stream<Path> files = Files.list(store.folder.resolve("scratch"))) {
      files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.startsWith("coldround-"))
          .filter(name -> !name.startsWith("coldround-" + service.pid() + "-"))
          .forEach(left::add);
    }
    Harm.check(left.isEmpty(), "files are left of a service that was killed: " + left);
  }

  private static void subscribe(KillableService service, Inbox inbox) throws Exception {
    service.call("POST", "/api/v1/subscriptions", "{\"url\":\"" + inbox.url() + "\"}").must(201);
  }

  /** The feed holds each change once, and each has come to the subscriber, in its order. */
  static void told(KillableService service, Inbox inbox) throws Exception {
    List<String> feed = new ArrayList<>();
    for (JsonNode event : service.all("/api/v1/feed")) {
      feed.add(event.path("id").asText());
    }
    Harm.check(feed.size() == new HashSet<>(feed).size(), "a change is in the feed twice");
    long end = System.nanoTime() + 180_000_000_000L;
    String last = feed.get(feed.size() - 1);
    List<String> told = inbox.ids();
    while (!told.contains(last)) {
      Harm.check(System.nanoTime() < end, "the last change did not come to the subscriber");
      Thread.sleep(100);
      told = inbox.ids();
    }
    // more may have happened since the feed was read
    told = told.subList(0, told.indexOf(last) + 1);
    // what was there before the subscription is not told
    List<String> due = feed.subList(feed.indexOf(told.get(0)), feed.size());
    Harm.check(told.equals(due), "what came to the subscriber is not the feed in its order");
  }
}
