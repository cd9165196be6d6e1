package coldround.http;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.concurrent.Callable;

/**
 * Calls that change something, done once: one that names an Idempotency-Key and comes again gets
 * the reply of the first time. What a call changes and its reply are one transaction.
 */
@ApplicationScoped
public class OneCall {

  private static final Duration KEPT = Duration.ofDays(30);
  private static final int LONGEST_KEY = 200;

  private final EntityManager entities;
  private final Attempts attempts;
  private final Answers answers;
  private final Clock clock;
  private final OneInstance instances;

  @Inject
  public OneCall(
      EntityManager entities,
      Attempts attempts,
      Answers answers,
      Clock clock,
      OneInstance instances) {
    this.entities = entities;
    this.attempts = attempts;
    this.answers = answers;
    this.clock = clock;
    this.instances = instances;
  }

  /**
   * @param key of the header; null or empty for none
   * @param scope whose call it is and of what: the same key elsewhere is another call
   * @param content all that was sent
   */
  public Response run(String key, String scope, byte[] content, Callable<Reply> work) {
    if (key == null || key.isEmpty()) {
      return attempts.inTransaction(work).response();
    }
    check(key);
    String id = digest((scope + '\n' + key).getBytes(StandardCharsets.UTF_8));
    return attempts.inTransaction(() -> once(id, digest(content), work)).response();
  }

  private static void check(String key) {
    if (key.length() > LONGEST_KEY || !key.chars().allMatch(c -> c > ' ' && c < 127)) {
      throw Problem.badField(
          "Idempotency-Key", null, "is at most " + LONGEST_KEY + " visible ASCII characters");
    }
  }

  private Reply once(String id, String content, Callable<Reply> work) throws Exception {
    RepliedRow known = entities.find(RepliedRow.class, id);
    if (known != null) {
      return again(known, content);
    }
    RepliedRow row = new RepliedRow();
    row.id = id;
    row.content = content;
    row.write(new Reply(0, "", "", ""), clock.instant());
    entities.persist(row);
    // now, so that the same call sent twice at once waits here
    entities.flush();
    Reply reply = work.call();
    // the work may have cleared what the entity manager held
    RepliedRow stored = entities.find(RepliedRow.class, id);
    stored.write(reply, clock.instant());
    return reply;
  }

  private static Reply again(RepliedRow known, String content) {
    if (!known.content.equals(content)) {
      throw Problem.unprocessable(
          "idempotency-key-reused",
          "This Idempotency-Key stands for another call",
          "A call with this key has said something else. Take a new key for each call.");
    }
    return known.read();
  }

  /** A reply whose body is the JSON of an object, with its tag. */
  public Reply reply(int status, String location, Object body) {
    byte[] json = answers.bytes(body);
    return new Reply(status, location, Answers.tag(json), new String(json, StandardCharsets.UTF_8));
  }

  /** Text by which contents are told apart. */
  static String digest(byte[] content) {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(content);
      return Base64.getUrlEncoder().withoutPadding().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  @Scheduled(every = "6h", delayed = "10m")
  void forgetOld() {
    instances.run(
        "forget-replies",
        Duration.ofMinutes(1),
        Duration.ofMinutes(30),
        () -> QuarkusTransaction.requiringNew().run(this::forget));
  }

  private void forget() {
    entities
        .createQuery("delete from RepliedRow where replied < :before")
        .setParameter("before", clock.instant().minus(KEPT))
        .executeUpdate();
  }
}
