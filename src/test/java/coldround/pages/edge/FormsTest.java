package coldround.pages.edge;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Walks every form of every page as it stands there and fills its fields with nonsense, one by one.
 */
@QuarkusTest
@TestProfile(DemoStore.class)
class FormsTest {

  // a longer one does not fit into the address of a form that only asks
  private static final List<String> NONSENSE =
      List.of("<script>alert(1)</script>", "x".repeat(3000), "-1e999", "\u0000\ud83e\uddca;--' \"");
  // the many readings of a visit are one kind of field; files are sent by a test of their own
  private static final int MOST_FIELDS = 14;
  private static final Pattern FORM = Pattern.compile("(?s)<form([^>]*)>(.*?)</form>");
  private static final Pattern FIELD =
      Pattern.compile(
          "(?s)<(input|select|textarea|button)\\b([^>]*)>(.*?)(?=<(?:input|select|textarea|button|/form)|$)");

  /** One form of a page with what its fields hold. */
  private record Form(String action, boolean post, Map<String, String> fields) {}

  @Inject SampleFleet fleet;

  private String address(String address) {
    return address.replace("UNIT", fleet.all().get(3).unitId());
  }

  private static List<Form> forms(String page) {
    List<Form> forms = new ArrayList<>();
    Matcher found = FORM.matcher(page + "</form>");
    while (found.find()) {
      String head = found.group(1);
      // where on the page the browser then looks is not sent
      String action = attribute(head, "action").replaceFirst("#.*", "");
      if (!head.contains("multipart") && !action.equals("/leave") && !action.startsWith("/demo")) {
        forms.add(new Form(action, head.contains("\"post\""), fields(found.group(2))));
      }
    }
    return forms;
  }

  private static Map<String, String> fields(String form) {
    Map<String, String> fields = new LinkedHashMap<>();
    Matcher found = FIELD.matcher(form);
    while (found.find()) {
      String name = attribute(found.group(2), "name");
      boolean ticked =
          !found.group(2).matches("(?s).*type=\"(radio|checkbox)\".*")
              || found.group(2).contains("checked");
      if (!name.isEmpty() && ticked) {
        String chosen =
            found.group(1).equals("select")
                ? found.group(3).replaceAll("(?s).*value=\"([^\"]*)\" selected.*", "$1")
                : attribute(found.group(2), "value");
        fields.put(name, chosen.startsWith("<") || chosen.contains("option") ? "" : chosen);
      }
    }
    return fields;
  }

  private static String attribute(String tag, String name) {
    Matcher found = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(tag);
    return found.find() ? found.group(1).replace("&amp;", "&") : "";
  }

  private static Response send(RequestSpecification who, Form form, Map<String, String> fields) {
    RequestSpecification call = who.redirects().follow(false);
    return form.post
        ? call.contentType("application/x-www-form-urlencoded; charset=UTF-8")
            .formParams(fields)
            .post(form.action)
        : call.queryParams(fields).get(form.action);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/units/UNIT/visits/new",
        "/upkeep",
        "/rounds",
        "/replacement",
        "/refrigerants",
        "/accounts",
        "/enter"
      })
  void nonsenseIsAnsweredWithAPageAndDoesNoHarm(String address) {
    String page = Api.asPlanner().get(address(address)).asString();
    List<Form> forms = forms(page);
    assertFalse(forms.isEmpty(), address + " has a form");
    for (Form form : forms) {
      form.fields.keySet().stream()
          .limit(MOST_FIELDS)
          .forEach(name -> NONSENSE.forEach(nonsense -> nonsense(form, name, nonsense)));
    }
  }

  private static void nonsense(Form form, String field, String nonsense) {
    Map<String, String> fields = new LinkedHashMap<>(form.fields);
    fields.put(field, nonsense);
    Response answer = send(Api.asPlanner(), form, fields);
    String what = form.action + ", " + field + ": " + nonsense.substring(0, 6);
    assertTrue(answer.statusCode() < 500, what + " answered " + answer.statusCode());
    boolean elsewhere = answer.statusCode() == 303;
    // no browser sends a NUL: it may be refused before any page is asked
    boolean early = nonsense.contains("\u0000") && answer.statusCode() == 400;
    boolean page = answer.contentType().startsWith("text/html");
    assertTrue(elsewhere || page || early, what);
    String body = answer.asString();
    assertFalse(body.contains("<script>alert"), what);
    assertFalse(body.contains("Exception") || body.contains("\tat "), what);
    assertTrue(elsewhere || body.contains("<h1") || early && !page, what);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/upkeep", "/rounds", "/replacement", "/accounts"})
  void whoseLoginHasRunOutIsShownTheWayIn(String address) {
    for (Form form : forms(Api.asPlanner().get(address).asString())) {
      Response answer = send(given().header("Accept", "text/html"), form, form.fields);
      String what = form.action + " answered " + answer.statusCode();
      boolean led = answer.statusCode() / 100 == 3 && answer.header("Location").contains("/enter");
      assertTrue(led || answer.statusCode() == 401 && answer.asString().contains("/enter"), what);
    }
  }

  @Test
  void aFormPressedTwiceIsAnsweredTwice() {
    for (String address : List.of("/", "/upkeep", "/replacement", "/refrigerants")) {
      for (Form form : forms(Api.asPlanner().get(address).asString())) {
        int first = send(Api.asPlanner(), form, form.fields).statusCode();
        int second = send(Api.asPlanner(), form, form.fields).statusCode();
        assertEquals(first, second, form.action);
        assertTrue(first < 500, form.action);
      }
    }
  }

  // what a form makes has an address, which the second press leads to as well
  @ParameterizedTest
  @CsvSource({"/rounds, /rounds, ''", "/replacement?customer=LMC, /replacement, customer"})
  void whatAFormMakesIsMadeOnceHoweverOftenItIsPressed(String page, String action, String field) {
    Form form = making(page, action);
    if (!field.isEmpty()) {
      form.fields.put(field, "LMC");
    }
    String first = made(form);
    assertEquals(first, made(form));
    // a new page of the form means it anew
    form.fields.put("once", making(page, action).fields.get("once"));
    String another = made(form);
    assertNotEquals(first, another);
    for (String plan : List.of(first, another)) {
      Api.asPlanner().delete("/api/v1" + plan);
    }
  }

  private static Form making(String page, String action) {
    String html = Api.asPlanner().get(page).asString();
    Matcher once = Pattern.compile("name=\"once\" value=\"([^\"]+)\"").matcher(html);
    assertTrue(once.find(), page);
    Form form = forms(html).stream().filter(f -> f.action.equals(action)).findFirst().orElseThrow();
    form.fields.put("once", once.group(1));
    return new Form(action, true, form.fields);
  }

  private static String made(Form form) {
    Response answer = send(Api.asPlanner(), form, form.fields);
    assertEquals(303, answer.statusCode(), answer.asString());
    return answer.header("Location").replaceAll("^https?://[^/]+", "");
  }

  @Test
  void anAccountIsMadeOnceAndItsTokenToldOnce() {
    Form form = making("/accounts", "/accounts");
    form.fields.put("name", "Pressed twice");
    form.fields.put("role", "planner");
    String first = send(Api.asPlanner(), form, form.fields).asString();
    assertTrue(first.contains("The token of Pressed twice"), first);
    String second = send(Api.asPlanner(), form, form.fields).asString();
    assertFalse(second.contains("class=\"token\""), second);
    assertTrue(second.contains("Pressed twice has an account already"), second);
    List<String> names =
        Api.asPlanner().get("/api/v1/accounts?limit=500").jsonPath().getList("items.name");
    assertEquals(1, names.stream().filter("Pressed twice"::equals).count());
  }
}
