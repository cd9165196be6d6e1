package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * {@code instances [RESTARTS]}: two services on one PostgreSQL behind what a load balancer does,
 * each restarted in turn while callers read and write without a pause. No call may fail, no web
 * hook may come twice.
 *
 * <p>{@code store-away [SECONDS]}: one service whose database goes and comes back while callers go
 * on. It answers 503 with Retry-After, and goes on by itself.
 */
final class Instances {

  private static final int CALLERS = 4;
  private static final Map<String, String> BEHIND_A_BALANCER =
      Map.of("QUARKUS_SHUTDOWN_DELAY", "3S");

  private Instances() {}

  private static List<String> ids(KillableService service, String path, String pointer)
      throws Exception {
    List<String> ids = new ArrayList<>();
    for (JsonNode item : service.get(path).path("items")) {
      ids.add(item.at(pointer).asText());
    }
    return ids;
  }

  static void restart(String... arguments) throws Exception {
    int restarts = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 4;
    try (Store store = Store.of(Store.Kind.POSTGRESQL);
        Inbox inbox = new Inbox()) {
      KillableService[] both = new KillableService[2];
      both[0] = KillableService.start(store, BEHIND_A_BALANCER);
      both[1] = KillableService.start(store, BEHIND_A_BALANCER);
      both[0].call("POST", "/api/v1/subscriptions", "{\"url\":\"" + inbox.url() + "\"}").must(201);
      Balanced balanced = new Balanced(List.of(both[0].port, both[1].port));
      ConcurrentLinkedQueue<String> failed = new ConcurrentLinkedQueue<>();
      Thread probe = probe(balanced);
      String begin = both[0].get("/api/v1/feed/snapshot?limit=1").path("cursor").asText();
      try (Follower follower = new Follower(balanced, begin);
          Load load =
              new Load(
                  balanced,
                  ids(both[0], "/api/v1/units?limit=80", "/unit/id"),
                  ids(both[0], "/api/v1/tasks?limit=500", "/id"),
                  CALLERS,
                  answer -> {
                    // a task may have been withdrawn or done meanwhile, which is an answer
                    boolean good =
                        answer.status() < 300 || List.of(404, 409).contains(answer.status());
                    if (!good) {
                      failed.add(answer.toString());
                    }
                  })) {
        for (int i = 0; i < restarts; i++) {
          Thread.sleep(3000);
          int which = i % 2;
          int port = both[which].port;
          both[which].stop();
          both[which] = KillableService.launch(store, port, BEHIND_A_BALANCER).awaitReady();
          System.out.printf("restart %d: %s, failed %s%n", i + 1, load.answers(), failed);
        }
        load.close();
        load.nothingLost(both[0]);
        String answers = load.answers().toString();
        Kills.told(both[1], inbox);
        List<String> feed = new ArrayList<>();
        both[1].all("/api/v1/feed", begin).forEach(event -> feed.add(event.path("id").asText()));
        System.out.printf(
            "{\"restarts\":%d,\"answers\":\"%s\",\"failed\":%d,\"hooks\":%d,\"hooksAgain\":%d,\"followed\":%d}%n",
            restarts,
            answers,
            failed.size(),
            inbox.ids().size(),
            inbox.again().size(),
            follower.check(feed));
        Harm.check(failed.isEmpty(), "calls failed: " + failed);
        Harm.check(inbox.again().isEmpty(), "web hooks came twice: " + inbox.again());
      } catch (Exception fault) {
        System.err.println("# " + both[1].call("GET", "/api/v1/subscriptions", null).body());
        for (KillableService each : both) {
          System.err.printf("# what %d had to say%n", each.port);
          each.log()
              .lines()
              .filter(line -> line.contains(" WARN ") || line.contains("oldround s"))
              .forEach(System.err::println);
        }
        throw fault;
      } finally {
        probe.interrupt();
        both[0].close();
        both[1].close();
      }
    }
  }

  private static Thread probe(Balanced balanced) {
    Thread thread =
        new Thread(
            () -> {
              try {
                while (true) {
                  balanced.look();
                  Thread.sleep(200);
                }
              } catch (InterruptedException e) {
                // the end
              }
            });
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  static void storeAway(String... arguments) throws Exception {
    int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 30;
    try (Store store = Store.of(Store.Kind.POSTGRESQL);
        KillableService service = KillableService.start(store, Map.of())) {
      ConcurrentLinkedQueue<String> bad = new ConcurrentLinkedQueue<>();
      try (Load load =
          new Load(
              new Balanced(List.of(service.port)),
              ids(service, "/api/v1/units?limit=80", "/unit/id"),
              ids(service, "/api/v1/tasks?limit=500", "/id"),
              2 * CALLERS,
              answer -> {
                boolean good =
                    answer.status() > 0 && answer.status() < 500
                        || answer.status() == 503
                            && !answer.retryAfter().isEmpty()
                            && answer.body().contains("urn:coldround:problem:store-away");
                if (!good) {
                  bad.add(answer.toString());
                }
              })) {
        Thread.sleep(5000);
        String before = load.answers().toString();
        store.stopServer();
        Thread.sleep(seconds * 1000L);
        String away = load.answers().toString();
        store.startServerAgain();
        long back = System.nanoTime();
        int served = load.visits.size();
        while (load.visits.size() < served + 10) {
          Harm.check(
              System.nanoTime() - back < 120_000_000_000L,
              "it does not come back: " + load.answers());
          Thread.sleep(20);
        }
        double recovered = (System.nanoTime() - back) / 1e9;
        Thread.sleep(3000);
        load.close();
        load.nothingLost(service);
        HashSet<String> kinds = new HashSet<>(bad);
        System.out.printf(
            "{\"secondsAway\":%d,\"before\":\"%s\",\"untilBack\":\"%s\",\"atTheEnd\":\"%s\",\"recoveredAfterSeconds\":%.1f,\"bad\":%d}%n",
            seconds, before, away, load.answers(), recovered, bad.size());
        Harm.check(bad.isEmpty(), "answers that are none: " + kinds.stream().limit(5).toList());
      }
    }
  }
}
