package coldround.upkeep.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.lessThan;
import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.Api;
import coldround.fleet.Today;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is given again is not asked for its reason again on the same day: rights end with days. */
@QuarkusTest
class BookedSitesTest {

  private static final int DAYS_AFTER = 31;

  @Inject EntityManager entities;

  @BeforeEach
  void aTaskIsBooked() {
    Api.put("customers", "customer,name\nBOOKED,Booked\n");
    Api.put("sites", "customer,site\nBOOKED,S\n");
    Api.put("units", "customer,site,unit,kind\nBOOKED,S,U,walk-in-cooler\n");
    String task =
        asPlanner().queryParam("customer", "BOOKED").get("/api/v1/tasks").path("items[0].id");
    asPlanner()
        .contentType("application/json")
        .body("{\"start\": \"2026-10-01T08:02:00-04:00\", \"technician\": \"BOOKED-ONE\"}")
        .put("/api/v1/tasks/" + task + "/booking")
        .then()
        .statusCode(lessThan(300));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-10-01T12:02:00Z, true",
    "2026-11-01T12:01:00Z, true",
    "2026-11-01T12:03:00Z, true",
    "2026-11-02T04:59:59Z, true",
    "2026-11-02T05:00:00Z, false",
    "2026-11-03T05:00:00Z, false"
  })
  void aRightLastsUntilTheEndOfItsLastDay(Instant now, boolean granted) {
    Today today = new Today(Clock.fixed(now, ZoneId.of("UTC")), ZoneId.of("America/New_York"));
    BookedSites sites = new BookedSites(entities, today, DAYS_AFTER);
    assertEquals(granted, sites.grants("BOOKED-ONE", "BOOKED", "S"));
    assertEquals(false, sites.grants("BOOKED-TWO", "BOOKED", "S"));
    assertEquals(false, sites.grants("BOOKED-ONE", "BOOKED", "T"));
  }
}
