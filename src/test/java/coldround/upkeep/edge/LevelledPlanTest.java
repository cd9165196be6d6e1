package coldround.upkeep.edge;

import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.FleetWiping;
import coldround.fleet.Today;
import coldround.pages.edge.OwnStore;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is levelled is what every list shows, and it stays where it was put. */
@QuarkusTest
@TestProfile(OwnStore.class)
class LevelledPlanTest {

  private static final int UNITS = 45;

  @Inject Today today;
  @Inject Everyday everyday;
  @Inject FleetWiping wiping;

  private static boolean alone;

  /** All looked at and cleaned on one day: their tasks fall due together, more than one can do. */
  @BeforeEach
  void aFleetForOneTechnician() {
    if (!alone) {
      // others of the same service leave technicians and work behind
      wiping.wipe();
      alone = true;
    }
    Api.put("customers", "customer,name\nLEVEL,Level\n");
    Api.put(
        "sites",
        "customer,site,latitude,longitude,jurisdiction,surroundings\nLEVEL,S,38,-79,US-VA,clean\n");
    StringBuilder units =
        new StringBuilder("customer,site,unit,kind,installed,refrigerant,charge [lb]\n");
    StringBuilder visits =
        new StringBuilder("customer,site,unit,visit,date,purpose,condenser_coil,work\n");
    LocalDate cleaned = today.usually().minusDays(120);
    for (int i = 0; i < UNITS; i++) {
      units.append("LEVEL,S,L" + i + ",reach-in-cooler,2019-03-01,R-134a,2\n");
      visits.append(
          "LEVEL,S,L" + i + ",1," + cleaned + ",planned,clean,condenser-coil-cleaned;inspected\n");
    }
    Api.put("technicians", "technician,name\nONE,One\n");
    Api.put("units", units.toString());
    Api.put("visits", visits.toString());
    everyday.everyHour();
  }

  private static List<Map<String, Object>> tasks() {
    List<Map<String, Object>> all = new ArrayList<>();
    String after = "";
    do {
      var page =
          Api.asPlanner()
              .queryParam("customer", "LEVEL")
              .queryParam("limit", 500)
              .queryParam("after", after)
              .get("/api/v1/tasks")
              .jsonPath();
      all.addAll(page.getList("items"));
      after = page.getString("next");
    } while (after != null);
    return all;
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> governing(Map<String, Object> task) {
    return ((List<Map<String, Object>>) task.get("reasons")).get(0);
  }

  private static List<Map<String, Object>> moved() {
    return tasks().stream()
        .filter(task -> governing(task).get("code").equals("week-over-capacity"))
        .toList();
  }

  private static Map<String, Object> dues() {
    Map<String, Object> dues = new TreeMap<>();
    tasks().forEach(task -> dues.put((String) task.get("id"), task.get("due")));
    return dues;
  }

  @Test
  @SuppressWarnings("unchecked")
  void aWeekOverCapacityMovesTasksEarlierWithinTheirWindowsAndSaysWhy() {
    List<Map<String, Object>> moved = moved();
    assertFalse(moved.isEmpty());
    for (Map<String, Object> task : moved) {
      String due = (String) task.get("due");
      Map<String, Object> inputs = (Map<String, Object>) governing(task).get("inputs");
      assertTrue(due.compareTo((String) inputs.get("due")) < 0, task.toString());
      assertTrue(due.compareTo((String) task.get("earliest")) >= 0, task.toString());
      assertTrue(due.compareTo((String) task.get("latest")) <= 0, task.toString());
      assertTrue(governing(task).get("source").toString().contains("technician-week"));
    }
    assertTrue(tasks().size() > moved.size());
  }

  @Test
  void theCalendarThePageAndTheFeedShowTheSameDay() {
    Map<String, Object> task = moved().get(0);
    LocalDate due = LocalDate.parse((String) task.get("due"));
    String calendar =
        Api.asPlanner()
            .queryParam("customer", "LEVEL")
            .queryParam("to", due.plusYears(1).toString())
            .get("/api/v1/feed/tasks.ics")
            .asString()
            .replace("\r\n ", "");
    String event = calendar.substring(calendar.indexOf("UID:" + task.get("id")));
    event = event.substring(0, event.indexOf("END:VEVENT"));
    assertTrue(
        event.contains("DTSTART;VALUE=DATE:" + DateTimeFormatter.BASIC_ISO_DATE.format(due)),
        event);
    String id = (String) ((Map<?, ?>) task.get("unit")).get("id");
    Api.asPlanner()
        .get("/units/" + id)
        .then()
        .statusCode(200)
        .body(containsString("brought forward from"));
    Api.asPlanner()
        .get("/upkeep")
        .then()
        .statusCode(200)
        .body(containsString("brought forward from"));
  }

  @Test
  void aNewReadingMovesOnlyTheTasksOfItsUnit() {
    Map<String, Object> before = dues();
    Api.put(
        "visits",
        "customer,site,unit,visit,date,purpose,condenser_coil,contactor\nLEVEL,S,L3,2,"
            + today.usually()
            + ",planned,heavy,worn\n");
    String unit = id("L3");
    Map<String, Object> after = dues();
    assertFalse(before.equals(after), "the unit itself has other tasks now");
    before.keySet().removeIf(task -> task.startsWith(unit + "-"));
    after.keySet().removeIf(task -> task.startsWith(unit + "-"));
    assertEquals(before, after);
  }

  private static String id(String tag) {
    return Api.asPlanner()
        .get("/api/v1/units?customer=LEVEL&unit=" + tag)
        .jsonPath()
        .getString("items[0].unit.id");
  }

  @Test
  void levellingAgainMovesNothing() {
    Map<String, Object> before = dues();
    everyday.everyHour();
    assertEquals(before, dues());
  }

  @Test
  void aBookedTaskKeepsItsDayAndGoesBackWhenTheBookingIsTakenAway() {
    Map<String, Object> task =
        tasks().stream()
            .filter(its -> its.get("task").equals("condenser-coil-cleaning"))
            .filter(its -> ((Map<?, ?>) its.get("unit")).get("tag").equals("L7"))
            .findFirst()
            .orElseThrow();
    String address = "/api/v1/tasks/" + task.get("id");
    LocalDate day = today.usually().plusDays(9);
    Api.asPlanner()
        .contentType("application/json")
        .body("{\"start\":\"" + day + "T09:00:00-05:00\",\"technician\":\"ONE\"}")
        .put(address + "/booking")
        .then()
        .statusCode(org.hamcrest.Matchers.lessThan(300));
    Map<String, Object> booked = byId(task);
    assertEquals(day.toString(), booked.get("due"));
    assertEquals("booked", governing(booked).get("code"));
    Api.put(
        "visits",
        "customer,site,unit,visit,date,purpose,condenser_coil\nLEVEL,S,L7,2,"
            + today.usually()
            + ",planned,blocked\n");
    everyday.everyHour();
    assertEquals(day.toString(), byId(task).get("due"), "a blocked coil is due at once");
    Api.asPlanner().delete(address + "/booking").then().statusCode(204);
    String without = (String) byId(task).get("due");
    assertTrue(without.compareTo(today.usually().toString()) <= 0, "overdue: " + without);
  }

  private static Map<String, Object> byId(Map<String, Object> task) {
    return tasks().stream()
        .filter(its -> its.get("id").equals(task.get("id")))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void moreTechniciansLetTheTasksGoBackToTheirDays() {
    assertFalse(moved().isEmpty());
    StringBuilder more = new StringBuilder("technician,name\n");
    for (int i = 0; i < 30; i++) {
      more.append("M" + i + ",More\n");
    }
    Api.put("technicians", more.toString());
    everyday.everyHour();
    assertTrue(moved().isEmpty());
    technicians.removeAllBut("ONE");
    everyday.everyHour();
    assertFalse(moved().isEmpty());
  }

  @Inject Technicians technicians;

  /** Takes technicians off the list, which no import does. */
  @jakarta.enterprise.context.ApplicationScoped
  public static class Technicians {
    @Inject jakarta.persistence.EntityManager entities;

    @jakarta.transaction.Transactional
    public void removeAllBut(String code) {
      entities
          .createNativeQuery("delete from technician where code <> :code")
          .setParameter("code", code)
          .executeUpdate();
    }
  }
}
