package coldround.upkeep.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** While the fleet is worked out anew, what comes from outside is taken and stays. */
@QuarkusTest
class AssessedMeanwhileTest {

  private static final int UNITS = 60;
  private static final int FILES = 5;

  @Inject Reassessment reassessment;

  private static void fleet() {
    Api.put("customers", "customer,name\nMEANWHILE,Meanwhile\n");
    Api.put("sites", "customer,site\nMEANWHILE,S\n");
    StringBuilder units = new StringBuilder("customer,site,unit,kind,installed,refrigerant\n");
    StringBuilder visits =
        new StringBuilder("customer,site,unit,visit,date,purpose,condenser_coil\n");
    for (int i = 0; i < UNITS; i++) {
      units.append("MEANWHILE,S,U" + i + ",walk-in-cooler,2015-03-01,R-404A\n");
      visits.append("MEANWHILE,S,U" + i + ",1,2026-01-12,planned,heavy\n");
    }
    Api.put("units", units.toString());
    Api.put("visits", visits.toString());
  }

  private static List<String> cleanings() {
    List<String> ids =
        asPlanner()
            .queryParam("customer", "MEANWHILE")
            .queryParam("limit", 500)
            .get("/api/v1/tasks")
            .jsonPath()
            .getList("items.findAll { it.task == 'condenser-coil-cleaning' }.id");
    assertEquals(UNITS, ids.size());
    return ids;
  }

  /** 503 busy says to send it again. */
  private static int complete(String task) {
    int status;
    do {
      status =
          asPlanner()
              .contentType("application/json")
              .body("{\"date\": \"2026-10-12\", \"work\": [\"condenser-coil-cleaned\"]}")
              .put("/api/v1/tasks/" + task + "/completion")
              .statusCode();
    } while (status == 503);
    return status;
  }

  @Test
  void whatWasAnsweredIsNotUndone() {
    fleet();
    List<String> tasks = cleanings();
    AtomicBoolean open = new AtomicBoolean(true);
    AtomicInteger rounds = new AtomicInteger();
    CompletableFuture<Void> assessing =
        CompletableFuture.runAsync(
            () -> {
              while (open.get()) {
                reassessment.everything();
                rounds.incrementAndGet();
              }
            });
    CompletableFuture<Void> files =
        CompletableFuture.runAsync(
            () -> {
              for (int i = 0; i < FILES; i++) {
                Api.put(
                    "visits",
                    "customer,site,unit,visit,date,purpose\nMEANWHILE,S,U0,F"
                        + i
                        + ",2026-02-12,planned\n");
              }
            });
    try {
      tasks.forEach(task -> assertEquals(201, complete(task), task));
      files.join();
      while (rounds.get() < 3 && !assessing.isDone()) {
        Thread.onSpinWait();
      }
    } finally {
      open.set(false);
    }
    assessing.join();
    List<String> undone = new ArrayList<>();
    for (String task : tasks) {
      if (asPlanner().get("/api/v1/tasks/" + task + "/completion").statusCode() != 200) {
        undone.add(task);
      }
    }
    assertEquals(List.of(), undone);
  }
}
