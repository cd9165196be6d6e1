package coldround.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/** Callers that read and write without a pause, and what they were answered. */
final class Load implements AutoCloseable {

  private static final int KINDS = 5;

  private final Balanced service;
  private final List<String> units;
  private final List<String> tasks;
  private final Consumer<Balanced.Answer> listener;
  private final List<Thread> threads = new ArrayList<>();
  private final AtomicInteger number = new AtomicInteger();
  private final Map<String, Integer> answers = new TreeMap<>();

  /** Number of each visit that was answered, with its unit. */
  final Map<String, String> visits = new ConcurrentHashMap<>();

  private volatile boolean open = true;

  /**
   * @param listener told of each answer, from all callers
   */
  Load(
      Balanced service,
      List<String> units,
      List<String> tasks,
      int callers,
      Consumer<Balanced.Answer> listener) {
    this.service = service;
    this.units = units;
    this.tasks = tasks;
    this.listener = listener;
    for (int i = 0; i < callers; i++) {
      Thread thread = new Thread(this::callOnAndOn);
      thread.start();
      threads.add(thread);
    }
  }

  private void callOnAndOn() {
    while (open) {
      int count = number.incrementAndGet();
      Balanced.Answer answer =
          switch (count % KINDS) {
            case 0 -> service.call("GET", "/api/v1/units?limit=20", null);
            case 1 -> service.call("GET", "/api/v1/feed?limit=20", null);
            case 2 -> visit(count);
            case 3 -> booking(count);
            default -> service.call("GET", "/api/v1/tasks?limit=20", null);
          };
      synchronized (answers) {
        answers.merge("" + answer.status(), 1, Integer::sum);
      }
      listener.accept(answer);
    }
  }

  private Balanced.Answer visit(int count) {
    String unit = units.get(count % units.size());
    Balanced.Answer answer =
        service.call(
            "POST",
            "/api/v1/visits",
            """
            {"unit": "%s", "visit": "L-%d", "date": "2026-05-12",
             "readings": [{"quantity": "head_pressure", "value": 240, "unit": "psig"}]}\
            """
                .formatted(unit, count));
    if (answer.status() == 201) {
      visits.put("L-" + count, unit);
    }
    return answer;
  }

  /** Booked and cancelled in turn, so that each is a change that is told. */
  private Balanced.Answer booking(int count) {
    int turn = count / KINDS;
    String place = "/api/v1/tasks/" + tasks.get(turn / 2 % tasks.size()) + "/booking";
    if (turn % 2 == 1) {
      return service.call("DELETE", place, null);
    }
    return service.call(
        "PUT",
        place,
        "{\"start\":\"2026-12-%02dT09:00:00Z\",\"technician\":\"T1\",\"reference\":\"L-%d\"}"
            .formatted(1 + turn % 28, count));
  }

  /** How often each status was answered. */
  Map<String, Integer> answers() {
    synchronized (answers) {
      return new TreeMap<>(answers);
    }
  }

  /** Every visit that was answered is there. */
  void nothingLost(KillableService on) throws Exception {
    for (Map.Entry<String, String> each : visits.entrySet()) {
      String place = "/api/v1/units/" + each.getValue() + "/visits/" + each.getKey();
      Harm.check(on.call("GET", place, null).status() == 200, "an answered visit is lost: " + each);
    }
  }

  @Override
  public void close() throws InterruptedException {
    open = false;
    for (Thread thread : threads) {
      thread.join();
    }
  }
}
