package coldround.field.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.validate.ValidationResult;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Tasks in a calendar that people subscribe to. What biweekly writes ical4j reads, which is of
 * another make; what no reader checks is checked byte by byte (RFC 5545, section 3.1).
 */
@QuarkusTest
class TaskCalendarTest {

  private FieldFleet fleet;
  private String task;

  @BeforeEach
  void oneTask() {
    fleet = new FieldFleet();
    JsonPath tasks = asPlanner().queryParam("unit", fleet.unit).get("/api/v1/tasks").jsonPath();
    task = tasks.getString("items.find { it.task == 'condenser-coil-cleaning' }.id");
  }

  private Response get(String... query) {
    var call = asPlanner().queryParam("customer", fleet.customer);
    for (int i = 0; i < query.length; i += 2) {
      call = call.queryParam(query[i], query[i + 1]);
    }
    return call.get("/api/v1/feed/tasks.ics");
  }

  private static Calendar read(Response response) throws Exception {
    Calendar calendar = readByOther(response);
    var same = Biweekly.parse(new ByteArrayInputStream(response.asByteArray())).first();
    assertTrue(
        same.validate(ICalVersion.V2_0).isEmpty(), same.validate(ICalVersion.V2_0).toString());
    return calendar;
  }

  private static Calendar readByOther(Response response) throws Exception {
    response.then().statusCode(200).contentType("text/calendar;charset=utf-8");
    byte[] bytes = response.asByteArray();
    assertBytesAreAsTheStandardWants(bytes);
    Calendar calendar = new CalendarBuilder().build(new ByteArrayInputStream(bytes));
    ValidationResult result = calendar.validate();
    assertFalse(result.hasErrors(), result.toString());
    return calendar;
  }

  private static void assertBytesAreAsTheStandardWants(byte[] bytes)
      throws CharacterCodingException {
    assertEquals('B', bytes[0], "no byte order mark");
    int start = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        assertEquals('\r', bytes[i - 1], "lines end in CRLF");
        assertTrue(i - 1 - start <= 75, "at most 75 octets");
        // refuses half a character
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, start, i - 1 - start));
        start = i + 1;
      } else if (bytes[i] == '\r') {
        assertEquals('\n', bytes[i + 1], "no CR alone");
      }
    }
    assertEquals(bytes.length, start, "the last line ends too");
  }

  private VEvent event(Calendar calendar) {
    return calendar.<VEvent>getComponents("VEVENT").stream()
        .filter(event -> text(event, Property.UID).equals(task + "@coldround"))
        .findFirst()
        .orElseThrow();
  }

  private static String text(VEvent event, String property) {
    return event.getProperty(property).map(p -> ((Property) p).getValue()).orElse("");
  }

  @Test
  void aTaskStandsOnItsDueDayWithItsReasons() throws Exception {
    Calendar calendar = read(get("to", "2099-01-01"));
    VEvent event = event(calendar);
    String due =
        asPlanner()
            .queryParam("unit", fleet.unit)
            .get("/api/v1/tasks")
            .jsonPath()
            .getString("items.find { it.id == '" + task + "' }.due");
    assertEquals(due.replace("-", ""), text(event, Property.DTSTART));
    assertEquals("TENTATIVE", text(event, Property.STATUS));
    assertEquals("0", text(event, Property.SEQUENCE));
    assertEquals(
        "condenser coil cleaning, " + fleet.customer + " S1 U1", text(event, Property.SUMMARY));
    assertTrue(
        text(event, Property.DESCRIPTION).contains("Due " + due), text(event, "DESCRIPTION"));
    assertEquals("1 Dock Street; rear, left", text(event, Property.LOCATION));
    assertEquals("45.5;-122.6", text(event, Property.GEO));
    List<String> uids =
        calendar.<VEvent>getComponents("VEVENT").stream().map(e -> text(e, Property.UID)).toList();
    assertEquals(uids.size(), new HashSet<>(uids).size());
  }

  @Test
  void aBookingMovesItToItsHourAndSequenceGrowsWithEachChange() throws Exception {
    book("2026-12-01T09:00:00-05:00");
    VEvent booked = event(read(get("to", "2099-01-01")));
    assertEquals("20261201T140000Z", text(booked, Property.DTSTART));
    assertEquals("PT40M", text(booked, Property.DURATION));
    assertEquals("CONFIRMED", text(booked, Property.STATUS));
    assertEquals("1", text(booked, Property.SEQUENCE));
    book("2026-12-02T09:00:00-05:00");
    assertEquals("2", text(event(read(get("to", "2099-01-01"))), Property.SEQUENCE));
    book("2026-12-02T09:00:00-05:00");
    assertEquals("2", text(event(read(get("to", "2099-01-01"))), Property.SEQUENCE));
    assertEquals(1, read(get("technician", "T1", "to", "2099-01-01")).getComponents().size());
  }

  private void book(String start) {
    book(start, "T1");
  }

  private void book(String start, String technician) {
    asPlanner()
        .contentType("application/json")
        .body(
            "{\"start\": \"%s\", \"technician\": \"%s\", \"reference\": \"WO-1\"}"
                .formatted(start, technician))
        .put("/api/v1/tasks/" + task + "/booking")
        .then()
        .statusCode(org.hamcrest.Matchers.oneOf(200, 201));
  }

  @Test
  void aTaskThatIsNoLongerAskedForIsCancelled() throws Exception {
    fleet
        .visit(
            "{'unit': 'UNIT', 'visit': '1', 'date': '2026-10-12', 'work':"
                + " ['condenser-coil-cleaned'], 'note': 'ä€😀 umlaut, euro and a face'}")
        .statusCode(201);
    VEvent event = event(read(get("to", "2099-01-01")));
    assertEquals("CANCELLED", text(event, Property.STATUS));
    assertEquals("1", text(event, Property.SEQUENCE));
  }

  // RFC 5545, section 3.8.1.11: what was in a calendar and is off is cancelled there
  @Test
  void aTaskThatPassesToAnotherIsCancelledInTheCalendarItLeft() throws Exception {
    book("2026-12-01T09:00:00-05:00", "T1");
    book("2026-12-02T09:00:00-05:00", "T2");
    VEvent left = event(of("T1"));
    assertEquals("CANCELLED", text(left, Property.STATUS));
    assertEquals("2", text(left, Property.SEQUENCE));
    assertEquals("20261201T140000Z", text(left, Property.DTSTART), "where it stood");
    assertEquals("TRANSPARENT", text(left, Property.TRANSP));
    VEvent now = event(of("T2"));
    assertEquals("CONFIRMED", text(now, Property.STATUS));
    assertEquals("20261202T140000Z", text(now, Property.DTSTART));
    assertEquals(1, events(read(get("to", "2099-01-01"))).size(), "once where all are");
    book("2026-12-03T09:00:00-05:00", "T1");
    assertEquals("CONFIRMED", text(event(of("T1")), Property.STATUS));
    assertEquals("3", text(event(of("T1")), Property.SEQUENCE));
    assertEquals("CANCELLED", text(event(of("T2")), Property.STATUS));
    assertEquals(1, events(of("T1")).size());
  }

  @Test
  void aBookingThatIsOffIsCancelledInTheCalendarOfTheTechnician() throws Exception {
    book("2026-12-01T09:00:00-05:00", "T1");
    cancelBooking();
    assertEquals("CANCELLED", text(event(of("T1")), Property.STATUS));
    assertEquals("2", text(event(of("T1")), Property.SEQUENCE));
    VEvent open = event(read(get("to", "2099-01-01")));
    assertEquals("TENTATIVE", text(open, Property.STATUS));
    assertEquals("2", text(open, Property.SEQUENCE));
    assertEquals(0, events(readByOther(get("technician", "T1", "site", "S2"))).size());
  }

  private Calendar of(String technician) throws Exception {
    return read(get("technician", technician, "to", "2099-01-01"));
  }

  private List<VEvent> events(Calendar calendar) {
    return calendar.<VEvent>getComponents("VEVENT").stream()
        .filter(event -> text(event, Property.UID).equals(task + "@coldround"))
        .toList();
  }

  private void cancelBooking() {
    asPlanner().delete("/api/v1/tasks/" + task + "/booking").then().statusCode(204);
  }

  @Test
  void aBookingThatIsCancelledAfterTheTaskWasClosedIsAChangeToo() throws Exception {
    book("2026-12-01T09:00:00-05:00", "T1");
    fleet
        .visit(
            "{'unit': 'UNIT', 'visit': '1', 'date': '2026-10-12', 'work':"
                + " ['condenser-coil-cleaned']}")
        .statusCode(201);
    VEvent withdrawn = event(read(get("to", "2099-01-01")));
    assertEquals("CANCELLED", text(withdrawn, Property.STATUS));
    int before = Integer.parseInt(text(withdrawn, Property.SEQUENCE));
    cancelBooking();
    VEvent after = event(read(get("to", "2099-01-01")));
    assertEquals("CANCELLED", text(after, Property.STATUS));
    assertEquals(before + 1, Integer.parseInt(text(after, Property.SEQUENCE)));
    assertEquals(before + 1, Integer.parseInt(text(event(of("T1")), Property.SEQUENCE)));
  }

  /**
   * A VEVENT knows no state for what is done (RFC 5545, section 3.8.1.11 has COMPLETED for VTODO
   * only): it stays, on the day on which it was done.
   */
  @ParameterizedTest
  @CsvSource({
    // no booking, another day than booked, the day that was booked at that place
    "                         ,20261012",
    "2026-12-01T09:00:00-05:00,20261012",
    "2026-10-12T22:00:00-05:00,20261013T030000Z"
  })
  void aTaskThatWasDoneStandsOnTheDayItWasDone(String booked, String start) throws Exception {
    if (booked != null) {
      book(booked);
    }
    complete();
    VEvent event = event(read(get("to", "2099-01-01")));
    assertEquals("CONFIRMED", text(event, Property.STATUS));
    assertTrue(text(event, Property.SUMMARY).startsWith("Done: "), text(event, Property.SUMMARY));
    assertEquals(start, text(event, Property.DTSTART));
    assertEquals("TRANSPARENT", text(event, Property.TRANSP), "its hours are free again");
  }

  private void complete() {
    asPlanner()
        .contentType("application/json")
        .body(
            "{\"visit\": \"7\", \"date\": \"2026-10-12\", \"work\": [\"condenser-coil-cleaned\"]}")
        .put("/api/v1/tasks/" + task + "/completion")
        .then()
        .statusCode(201);
  }

  @Test
  void aTaskWhoseCompletionIsTakenBackIsOpenAgainAndCanBeDone() throws Exception {
    complete();
    // the visit is corrected: nothing was cleaned
    fleet
        .visit("{'unit': 'UNIT', 'visit': '7', 'date': '2026-10-12', 'work': ['inspected']}")
        .statusCode(200);
    VEvent open = event(read(get("to", "2099-01-01")));
    assertEquals("TENTATIVE", text(open, Property.STATUS));
    asPlanner().get("/api/v1/tasks/" + task + "/completion").then().statusCode(404);
    asPlanner()
        .contentType("application/json")
        .body(
            "{\"visit\": \"8\", \"date\": \"2026-10-13\", \"work\": [\"condenser-coil-cleaned\"]}")
        .put("/api/v1/tasks/" + task + "/completion")
        .then()
        .statusCode(201);
    assertEquals("20261013", text(event(read(get("to", "2099-01-01"))), Property.DTSTART));
  }

  @Test
  void anUnchangedCalendarIsNotSentTwiceAndOneOfAnotherSiteIsAnother() throws Exception {
    String tag = get().header("ETag");
    asPlanner()
        .queryParam("customer", fleet.customer)
        .header("If-None-Match", tag)
        .get("/api/v1/feed/tasks.ics")
        .then()
        .statusCode(304);
    assertNotEquals(tag, get("site", "S2").header("ETag"));
    get("to", "soon").then().statusCode(400).body("errors[0].field", equalTo("to"));
  }

  // a time zone is a component by RFC 5545, section 3.6, but biweekly does not count it as one
  @Test
  void aCalendarWithNothingInItCanBeReadToo() throws Exception {
    assertEquals(List.of(), readByOther(get("technician", "nobody")).getComponents("VEVENT"));
  }

  @Test
  void charactersOfManyOctetsAreFoldedWhole() throws Exception {
    FieldFleet.list(
        "sites",
        "customer,site,address\n" + fleet.customer + ",S1,\"" + "ä€😀".repeat(60) + "\"\n");
    assertEquals("ä€😀".repeat(60), text(event(read(get("to", "2099-01-01"))), Property.LOCATION));
  }

  @Test
  void aSnapshotHoldsAllOpenTasksAndGoesOnInTheFeed() {
    book("2026-12-01T09:00:00-05:00");
    JsonPath first = asPlanner().queryParam("limit", 2).get("/api/v1/feed/snapshot").jsonPath();
    String cursor = first.getString("cursor");
    fleet
        .visit(
            "{'unit': 'UNIT', 'visit': '1', 'date': '2026-10-12', 'work':"
                + " ['condenser-coil-cleaned']}")
        .statusCode(201);
    java.util.Set<String> ids = new HashSet<>(first.<String>getList("items.id"));
    int count = ids.size();
    JsonPath page = first;
    while (page.getString("next") != null) {
      page =
          asPlanner()
              .queryParam("limit", 50)
              .queryParam("after", page.getString("next"))
              .get("/api/v1/feed/snapshot")
              .jsonPath();
      assertEquals(cursor, page.getString("cursor"));
      assertFalse(page.getList("items.reasons").contains(List.of()));
      ids.addAll(page.getList("items.id"));
      count += page.getList("items").size();
    }
    assertEquals(count, ids.size(), "no task twice");
    List<String> told =
        asPlanner()
            .queryParam("after", cursor)
            .get("/api/v1/feed")
            .jsonPath()
            .getList("items.subject");
    assertTrue(told.contains(task), "what changed behind the cursor is in the feed");
    List<String> open =
        asPlanner()
            .queryParam("unit", fleet.unit)
            .get("/api/v1/tasks")
            .jsonPath()
            .getList("items.id");
    ids.addAll(told);
    assertTrue(ids.containsAll(open), "snapshot and feed together miss none");
  }
}
