package coldround.feed.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.feed.HookSecret;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import io.vertx.core.Vertx;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class HookSenderTest {

  private static final List<HookSecret> SECRETS = List.of(HookSecret.random());

  private final Vertx vertx = Vertx.vertx();
  private final Receiver receiver = new Receiver();
  private final ExecutorService threads = Executors.newCachedThreadPool();

  @AfterEach
  void close() {
    threads.shutdownNow();
    receiver.close();
    vertx.close();
  }

  private HookSender sender(HooksConfig config) {
    return new HookSender(
        config,
        new ServiceAddress(Optional.of("http://localhost")),
        new ObjectMapper().registerModule(new JavaTimeModule()),
        Clock.systemUTC(),
        vertx);
  }

  private static FeedEvent event(long id) {
    return new FeedEvent(id, 0, id, "coldround.test", Long.toString(id), Instant.EPOCH, "{}");
  }

  private HookSender.Outcome send(HookSender sender, long id) throws InterruptedException {
    return sender.send(URI.create(receiver.url()), SECRETS, event(id), 0);
  }

  private static int when(CountDownLatch latch) {
    try {
      assertTrue(latch.await(60, TimeUnit.SECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return 200;
  }

  @Test
  void asManyAsMaySubscribeAreSentToOneHostAtOnce() throws Exception {
    HookSender sender = sender(new FewHooks(5));
    CountDownLatch all = new CountDownLatch(5);
    receiver.answer =
        subject -> {
          all.countDown();
          return when(all);
        };
    List<Future<HookSender.Outcome>> outcomes = new ArrayList<>();
    for (long id = 1; id <= 5; id++) {
      long each = id;
      outcomes.add(threads.submit(() -> send(sender, each)));
    }
    for (Future<HookSender.Outcome> outcome : outcomes) {
      assertEquals("", outcome.get().problem());
    }
  }

  @Test
  void whatWasGivenUpBeforeItWentOutDoesNotGoOutLater() throws Exception {
    FewHooks config = new FewHooks(1);
    HookSender sender = sender(config);
    CountDownLatch there = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    receiver.answer =
        subject -> {
          there.countDown();
          return when(end);
        };
    Future<HookSender.Outcome> first = threads.submit(() -> send(sender, 1));
    when(there);
    config.answerLimit = Duration.ofMillis(100);
    assertFalse(send(sender, 2).delivered(), "there is one connection, and it is taken");
    config.answerLimit = Duration.ofSeconds(50);
    end.countDown();
    assertTrue(first.get().delivered());
    assertTrue(send(sender, 3).delivered());
    assertEquals(List.of("1", "3"), receiver.taken());
  }
}
