package coldround.feed.edge;

import static coldround.feed.edge.Receiver.until;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.feed.HookSecret;
import coldround.http.Attempts;
import io.vertx.core.Vertx;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What is sent once is written down before anybody else may send it. */
class CourierTest {

  private final List<String> done = new CopyOnWriteArrayList<>();
  private final Vertx vertx = Vertx.vertx();
  private final FewHooks config = new FewHooks(5);
  private final FeedSignal signal = new FeedSignal(null);
  private final CountDownLatch ended = new CountDownLatch(1);
  private final Attempts attempts =
      new Attempts(null, "h2") {
        @Override
        public <T> T inTransaction(Callable<T> work) {
          try {
            return work.call();
          } catch (RuntimeException e) {
            throw e;
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        }
      };

  /** What the store does. */
  private abstract class Book extends DeliveryBook {
    private final DeliveryBook.Turn first;

    Book(List<Long> letters, List<Long> events) {
      super(null, null, config, Clock.systemUTC());
      SubscriptionRow row = new SubscriptionRow();
      row.id = "s";
      row.types = "";
      this.first =
          new DeliveryBook.Turn(
              row,
              URI.create("http://127.0.0.1/"),
              List.of(HookSecret.random()),
              Duration.ZERO,
              letters.stream().map(CourierTest::letter).toList(),
              events.stream().map(CourierTest::event).toList());
    }

    @Override
    Optional<Turn> turn(String id, String holder) {
      boolean begins = done.isEmpty();
      if (!begins) {
        done.add("nothing more");
      }
      return begins ? Optional.of(first) : Optional.empty();
    }

    @Override
    boolean reached(String id, String holder, long position, boolean delivered) {
      done.add("reached " + position);
      return true;
    }

    @Override
    boolean sentAgain(String id, String holder, long letter, HookSender.Outcome outcome) {
      done.add("sent again " + letter);
      return true;
    }

    @Override
    boolean release(String id, String holder) {
      done.add("released");
      return true;
    }
  }

  private static FeedEvent event(long id) {
    return new FeedEvent(id, 0, id, "coldround.test", "test", Instant.EPOCH, "{}");
  }

  private static DeadLetterRow letter(long id) {
    DeadLetterRow letter = new DeadLetterRow();
    letter.id = id;
    letter.eventId = id;
    return letter;
  }

  @AfterEach
  void close() {
    vertx.close();
  }

  /** Sets it off; when it has sent something the service ends, if it is to. */
  private void deliver(DeliveryBook book, boolean ends) {
    Courier[] courier = new Courier[1];
    HookSender sender =
        new HookSender(config, null, null, null, vertx) {
          @Override
          Outcome send(URI url, List<HookSecret> secrets, FeedEvent event, int tries) {
            done.add("sent " + event.number());
            if (ends) {
              end(courier[0]);
            }
            return new Outcome(200, "", Duration.ZERO);
          }
        };
    Subscriptions subscriptions =
        new Subscriptions(null, null, null, null) {
          @Override
          List<String> active() {
            return List.of("s");
          }
        };
    Ordering ordering =
        new Ordering(null, null) {
          @Override
          void some() {
            // there is nothing to order
          }
        };
    courier[0] = new Courier(subscriptions, book, sender, ordering, signal, attempts, config);
    courier[0].begin(null);
  }

  private void end(Courier courier) {
    long mark = signal.mark();
    Thread end =
        new Thread(
            () -> {
              try {
                courier.end(null);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              ended.countDown();
            });
    end.start();
    until("it is ending", () -> signal.mark() != mark);
  }

  private static List<Long> ids(int most) {
    return LongStream.rangeClosed(1, most).boxed().toList();
  }

  private void isEnded() throws InterruptedException {
    assertTrue(ended.await(60, TimeUnit.SECONDS));
  }

  @Test
  void whatWasSentIsWrittenDownThoughTheStoreFailsAtTheEnd() throws Exception {
    int[] failures = {2};
    deliver(
        new Book(List.of(), ids(2)) {
          @Override
          boolean reached(String id, String holder, long position, boolean delivered) {
            if (failures[0]-- > 0) {
              throw new IllegalStateException("the store of this test is away");
            }
            return super.reached(id, holder, position, delivered);
          }
        },
        true);
    isEnded();
    assertEquals(List.of("sent 1", "reached 1", "released"), done);
  }

  @Test
  void nothingIsReleasedThatCouldNotBeWrittenDown() throws Exception {
    deliver(
        new Book(List.of(), ids(2)) {
          @Override
          Duration hold() {
            return Duration.ofMillis(50);
          }

          @Override
          boolean reached(String id, String holder, long position, boolean delivered) {
            throw new IllegalStateException("the store of this test is away");
          }
        },
        true);
    isEnded();
    until("its thread has ended", () -> !threads().contains("web-hook-s"));
    assertTrue(!done.contains("released"), done.toString());
  }

  private static List<String> threads() {
    return Thread.getAllStackTraces().keySet().stream().map(Thread::getName).toList();
  }

  @Test
  void noDeadLetterIsBegunAtTheEnd() throws Exception {
    deliver(new Book(ids(2), ids(2)) {}, true);
    isEnded();
    assertEquals(List.of("sent 1", "sent again 1", "released"), done);
  }

  @Test
  void nothingIsSentWhenSomebodyElseDelivers() {
    deliver(
        new Book(ids(2), ids(2)) {
          @Override
          boolean sentAgain(String id, String holder, long letter, HookSender.Outcome outcome) {
            super.sentAgain(id, holder, letter, outcome);
            return false;
          }
        },
        false);
    until("it is done", () -> done.contains("nothing more"));
    assertEquals(List.of("sent 1", "sent again 1", "nothing more"), done);
  }

  // a thread that is interrupted within the embedded store closes its file
  @Test
  void nobodyIsInterruptedWhileWriting() throws Exception {
    deliver(
        new Book(List.of(), ids(1)) {
          @Override
          Duration hold() {
            return Duration.ofMillis(50);
          }

          @Override
          boolean reached(String id, String holder, long position, boolean delivered) {
            try {
              isEnded();
            } catch (InterruptedException e) {
              done.add("interrupted");
            }
            return super.reached(id, holder, position, delivered);
          }
        },
        true);
    isEnded();
    until("it is released", () -> done.contains("released"));
    assertEquals(List.of("sent 1", "reached 1", "released"), done);
  }
}
