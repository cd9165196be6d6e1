package coldround.feed.edge;

import static coldround.Api.asPlanner;
import static coldround.feed.edge.Receiver.until;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.feed.Change;
import coldround.feed.EventTypes;
import coldround.feed.Outbox;
import com.standardwebhooks.Webhook;
import io.cloudevents.CloudEvent;
import io.cloudevents.jackson.JsonFormat;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Changes are sent to those who subscribed, whatever befalls them. */
@QuarkusTest
class WebHooksTest {

  @Inject Outbox outbox;
  @Inject Subscriptions subscriptions;
  @Inject EntityManager entities;

  private final Receiver receiver = new Receiver();
  private final String run = UUID.randomUUID().toString().substring(0, 8) + "-";

  @AfterEach
  void unsubscribeAll() {
    List<String> ids = asPlanner().get("/api/v1/subscriptions").jsonPath().getList("items.id");
    ids.forEach(id -> asPlanner().delete("/api/v1/subscriptions/" + id).then().statusCode(204));
    receiver.close();
  }

  /** Other tests change tasks meanwhile, so only a kind that is not told otherwise is asked for. */
  private JsonPath subscribe() {
    return subscribe(receiver);
  }

  private static JsonPath subscribe(Receiver receiver) {
    return post(Map.of("url", receiver.url(), "types", List.of(EventTypes.TASK_UNBOOKED)))
        .statusCode(201)
        .extract()
        .jsonPath();
  }

  private static ValidatableResponse post(Map<String, ?> body) {
    return asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/subscriptions")
        .then();
  }

  private void change(int... numbers) {
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                outbox.add(
                    IntStream.of(numbers)
                        .mapToObj(
                            n -> new Change(EventTypes.TASK_UNBOOKED, run + n, Map.of("number", n)))
                        .toList()));
  }

  private List<String> subjects(int... numbers) {
    return IntStream.of(numbers).mapToObj(n -> run + n).toList();
  }

  private static ValidatableResponse stands(String id) {
    return asPlanner().get("/api/v1/subscriptions/" + id).then().statusCode(200);
  }

  private static String state(String id) {
    return stands(id).extract().path("state");
  }

  // the signature is checked by the library of the standard, the body read by the SDK of
  // CloudEvents
  @Test
  void eachChangeComesOnceSignedAsACloudEventAndInOrder() throws Exception {
    JsonPath subscription = subscribe();
    int[] all = IntStream.range(0, 120).toArray();
    for (int from = 0; from < all.length; from += 10) {
      change(IntStream.range(from, from + 10).toArray());
    }
    until("all have come", () -> receiver.messages.size() >= all.length);
    assertEquals(subjects(all), receiver.taken());
    Webhook webhook = new Webhook(subscription.getString("secret"));
    for (Receiver.Message message : receiver.messages) {
      assertDoesNotThrow(() -> webhook.verify(message.body(), message.headers()));
      CloudEvent event =
          new JsonFormat().deserialize(message.body().getBytes(StandardCharsets.UTF_8));
      assertEquals(message.id(), event.getId());
      assertEquals(EventTypes.TASK_UNBOOKED, event.getType());
      assertTrue(event.getDataSchema().toString().endsWith("/api/v1/schemas/" + event.getType()));
    }
    String type = receiver.messages.get(0).headers().firstValue("content-type").orElseThrow();
    assertTrue(type.startsWith("application/cloudevents+json"), type);
  }

  @Test
  void aHookSaysTheSameAsTheFeed() {
    JsonPath subscription = subscribe();
    change(1);
    until("it has come", () -> !receiver.messages.isEmpty());
    Map<String, ?> inFeed =
        asPlanner()
            .queryParam("after", subscription.getString("cursor"))
            .get("/api/v1/feed")
            .jsonPath()
            .getMap("items.find { it.subject == '" + run + "1' }");
    assertEquals(inFeed, JsonPath.from(receiver.messages.get(0).body()).getMap(""));
  }

  @Test
  void whatFailsIsTriedAgainBeforeAnythingBehindIt() {
    String id = subscribe().getString("id");
    int[] failures = {2};
    receiver.answer = subject -> subject.endsWith("-2") && failures[0]-- > 0 ? 503 : 204;
    change(1, 2, 3);
    until("all have come", () -> receiver.taken().size() == 3);
    assertEquals(
        subjects(1, 2, 2, 2, 3), receiver.messages.stream().map(m -> m.subject()).toList());
    assertEquals(receiver.messages.get(1).id(), receiver.messages.get(3).id(), "the same id");
    until("it is written down", () -> stands(id).extract().path("delivered") != null);
    stands(id).body("tries", equalTo(0), "deadLetters", equalTo(0));
  }

  @Test
  void whatIsNeverTakenBecomesADeadLetterThatCanBeSentAgain() {
    String id = subscribe().getString("id");
    receiver.answer = subject -> subject.endsWith("-2") ? 500 : 200;
    change(1, 2, 3);
    until("the next has come", () -> receiver.taken().equals(subjects(1, 3)));
    String letters = "/api/v1/subscriptions/" + id + "/dead-letters";
    String letter =
        asPlanner()
            .get(letters)
            .then()
            .body(
                "items", hasSize(1),
                "items[0].problem", containsString("500"),
                "items[0].tries", equalTo(4),
                "items[0].event.subject", equalTo(run + "2"))
            .extract()
            .path("items[0].id");
    asPlanner().post(letters + "/" + letter + "/again").then().statusCode(202);
    until(
        "it has failed again",
        () -> asPlanner().get(letters).jsonPath().getInt("items[0].tries") == 5);
    receiver.answer = subject -> 200;
    asPlanner().post(letters + "/again").then().statusCode(202).body("letters", equalTo(1));
    until("it has come", () -> receiver.taken().equals(subjects(1, 3, 2)));
    assertEquals(
        1,
        receiver.messages.stream()
            .filter(message -> message.subject().endsWith("-2"))
            .map(Receiver.Message::id)
            .distinct()
            .count(),
        "one id however often it is sent");
    until(
        "it is none any more",
        () -> asPlanner().get(letters).jsonPath().getList("items").isEmpty());
    asPlanner().post(letters + "/" + letter + "/again").then().statusCode(404);
  }

  @Test
  void aSubscriberThatFailsForEverIsStoppedAndLosesNothing() {
    String id = subscribe().getString("id");
    receiver.answer = subject -> 500;
    change(1, 2, 3, 4, 5);
    until("it is stopped", () -> state(id).equals("stopped"));
    stands(id).body("deadLetters", equalTo(3), "reason", containsString("3 changes in a row"));
    asPlanner()
        .post("/api/v1/subscriptions/" + id + "/dead-letters/again")
        .then()
        .statusCode(409)
        .contentType("application/problem+json");
    receiver.answer = subject -> 200;
    asPlanner().post("/api/v1/subscriptions/" + id + "/resume").then().statusCode(200);
    until("the rest has come", () -> receiver.taken().equals(subjects(4, 5)));
    asPlanner().post("/api/v1/subscriptions/" + id + "/dead-letters/again").then().statusCode(202);
    until("all has come", () -> receiver.taken().equals(subjects(4, 5, 1, 2, 3)));
  }

  // Standard Webhooks 1.0.0: 410 asks for no more
  @Test
  void aSubscriberThatIsGoneIsLeftAlone() {
    String id = subscribe().getString("id");
    receiver.answer = subject -> 410;
    change(1);
    until("it is stopped", () -> state(id).equals("stopped"));
    stands(id).body("deadLetters", equalTo(0));
    int sent = receiver.messages.size();
    try (Receiver other = new Receiver()) {
      subscribe(other);
      change(2);
      until("the other has it", () -> other.taken().equals(subjects(2)));
    }
    assertEquals(sent, receiver.messages.size());
  }

  @Test
  void anAnswerThatLeadsElsewhereIsNotFollowed() {
    String id = subscribe().getString("id");
    receiver.answer = subject -> 302;
    change(1);
    until("it is a dead letter", () -> (int) stands(id).extract().path("deadLetters") == 1);
    assertEquals(4, receiver.messages.size());
  }

  @Test
  void oneThatIsSlowHoldsUpNobodyElseAndIsGivenUp() {
    try (Receiver other = new Receiver()) {
      String id = subscribe().getString("id");
      subscribe(other);
      receiver.slowMs = 3000;
      change(1, 2, 3);
      until("the other has all", () -> other.taken().equals(subjects(1, 2, 3)));
      assertFalse(receiver.messages.size() > 1, "the slow one still has its first");
      until("no answer is a failure", () -> (int) stands(id).extract().path("tries") > 0);
      stands(id).body("reason", containsString("no answer within"));
    }
  }

  @Test
  void bothSecretsSignWhileTheReceiverChangesOver() throws Exception {
    JsonPath subscription = subscribe();
    JsonPath rotated =
        asPlanner()
            .post("/api/v1/subscriptions/" + subscription.getString("id") + "/secret")
            .then()
            .statusCode(200)
            .extract()
            .jsonPath();
    change(1);
    until("it has come", () -> !receiver.messages.isEmpty());
    Receiver.Message message = receiver.messages.get(0);
    for (JsonPath each : List.of(subscription, rotated)) {
      Webhook webhook = new Webhook(each.getString("secret"));
      assertDoesNotThrow(() -> webhook.verify(message.body(), message.headers()));
    }
    assertFalse(subscription.getString("secret").equals(rotated.getString("secret")));
    expireOldSecret(subscription.getString("id"));
    change(2);
    until("the next has come", () -> receiver.messages.size() == 2);
    String one = receiver.messages.get(1).headers().firstValue("webhook-signature").orElseThrow();
    assertEquals(1, one.split(" ").length, "only the new one signs");
  }

  private void expireOldSecret(String id) {
    QuarkusTransaction.requiringNew()
        .run(() -> subscriptions.locked(id).orElseThrow().oldUntil = Instant.now().minusSeconds(1));
  }

  // a name that led to a public address when it was registered may lead elsewhere later
  @Test
  void anAddressIsCheckedAgainWhenItIsConnectedTo() {
    String id =
        QuarkusTransaction.requiringNew()
            .call(
                () ->
                    subscriptions.add(
                            "https://10.255.255.1/hook",
                            List.of(EventTypes.TASK_UNBOOKED),
                            "",
                            entities.find(FeedHeadRow.class, 1).position)
                        .id);
    change(1);
    until("it is a dead letter", () -> (int) stands(id).extract().path("deadLetters") == 1);
    asPlanner()
        .get("/api/v1/subscriptions/" + id + "/dead-letters")
        .then()
        .body("items[0].problem", containsString("no address of the public internet"));
  }

  @Test
  void aServiceThatWasKilledIsFollowedByOneThatGoesOnWhereItWrote() {
    String id = subscribe().getString("id");
    change(1);
    until("it is written down", () -> stands(id).extract().path("delivered") != null);
    // as one that was killed leaves it: it held the right to deliver, and not for long any more
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              SubscriptionRow row = subscriptions.locked(id).orElseThrow();
              row.holder = "killed";
              row.heldUntil = Instant.now().plusSeconds(2);
            });
    change(2, 3);
    until("the rest has come", () -> receiver.taken().containsAll(subjects(2, 3)));
    assertEquals(subjects(1, 2, 3), receiver.taken().stream().distinct().toList());
  }

  @Test
  void deadLettersAreSentAgainByTheOneWhoHoldsTheSubscription() {
    String id = subscribe().getString("id");
    receiver.answer = subject -> 500;
    change(1, 2);
    until("both are dead letters", () -> (int) stands(id).extract().path("deadLetters") == 2);
    boolean[] taken = {false};
    receiver.answer =
        subject -> {
          if (!taken[0]) {
            taken[0] = true;
            takeOver(id);
          }
          return 200;
        };
    String letters = "/api/v1/subscriptions/" + id + "/dead-letters";
    asPlanner().post(letters + "/again").then().statusCode(202);
    until(
        "there is none any more",
        () -> asPlanner().get(letters).jsonPath().getList("items").isEmpty());
    // the first was not written down any more by the one who had sent it, and the second not sent
    assertEquals(subjects(1, 1, 2), receiver.taken());
  }

  /** As another instance would, and was ended. */
  private void takeOver(String id) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              SubscriptionRow row = subscriptions.locked(id).orElseThrow();
              row.holder = "another";
              row.heldUntil = Instant.now().plusSeconds(2);
            });
  }

  @Test
  void aClockThatWasSetBackDelaysNothingForLong() {
    String id = subscribe().getString("id");
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              SubscriptionRow row = subscriptions.locked(id).orElseThrow();
              row.nextTry = Instant.now().plus(3650, ChronoUnit.DAYS);
              row.heldUntil = row.nextTry;
              row.holder = "another";
              row.tries = 1;
            });
    change(1);
    until("it has come", () -> receiver.taken().equals(subjects(1)));
  }

  @Test
  void onlyKindsThatWereAskedForCome() {
    post(Map.of("url", receiver.url(), "types", List.of(EventTypes.ROUND_CANCELLED)))
        .statusCode(201);
    try (Receiver other = new Receiver()) {
      subscribe(other);
      change(1);
      until("the other has it", () -> other.taken().equals(subjects(1)));
    }
    assertEquals(List.of(), receiver.messages);
  }

  @Test
  void tellingBeginsBehindTheCursorThatWasNamed() {
    String before = subscribe().getString("cursor");
    change(1, 2);
    until("both have come", () -> receiver.taken().size() == 2);
    try (Receiver late = new Receiver()) {
      post(Map.of("url", late.url(), "types", List.of(EventTypes.TASK_UNBOOKED), "after", before))
          .statusCode(201);
      until("it has what it missed", () -> late.taken().equals(subjects(1, 2)));
    }
  }

  @Test
  void theSecretIsShownOnlyWhereItIsMade() {
    String id = subscribe().getString("id");
    stands(id).body("$", not(hasKey("secret")));
    asPlanner().get("/api/v1/subscriptions").then().body("items.secret", equalTo(nulls()));
  }

  private static List<Object> nulls() {
    return java.util.Collections.singletonList(null);
  }

  @Test
  void subscribingAgainWithTheSameKeyIsOneSubscription() {
    Map<String, ?> body =
        Map.of("url", receiver.url(), "types", List.of(EventTypes.ROUND_CANCELLED));
    List<String> ids =
        IntStream.range(0, 2)
            .mapToObj(
                i ->
                    asPlanner()
                        .header("Idempotency-Key", run + "key")
                        .contentType("application/json")
                        .body(body)
                        .post("/api/v1/subscriptions")
                        .then()
                        .statusCode(201)
                        .extract()
                        .<String>path("id"))
            .toList();
    assertEquals(ids.get(0), ids.get(1));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{}|/url|400",
        "{\"url\": \"https://169.254.169.254/latest\"}|/url|400",
        "{\"url\": \"https://10.0.0.1/\"}|/url|400",
        "{\"url\": \"https://[fe80::1]/\"}|/url|400",
        "{\"url\": \"http://8.8.8.8/\"}|/url|400",
        "{\"url\": \"ftp://127.0.0.1/\"}|/url|400",
        "{\"url\": \"https://a b/\"}|/url|400",
        "{\"url\": \"http://127.0.0.1/\", \"types\": [\"x\"]}|/types|400",
        "{\"url\": \"http://127.0.0.1/\", \"after\": \"f1.zzzzzzzzzzzz\"}|after|400",
        "{\"url\": \"http://127.0.0.1/\", \"color\": 1}|/color|400",
        "[]|/|400"
      })
  void whatCannotBeSubscribedIsToldWithItsField(String body, String field, int status) {
    asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/subscriptions")
        .then()
        .statusCode(status)
        .contentType("application/problem+json")
        .body("errors[0].field", equalTo(field));
  }

  @Test
  void whatIsNotThereIsTold() {
    for (String call : List.of("", "/dead-letters")) {
      asPlanner().get("/api/v1/subscriptions/none" + call).then().statusCode(404);
    }
    for (String call : List.of("/secret", "/resume", "/dead-letters/again")) {
      asPlanner().post("/api/v1/subscriptions/none" + call).then().statusCode(404);
    }
    asPlanner().get("/api/v1/subscriptions").then().body("items", empty());
  }
}
