package coldround.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AtOnceTest {

  private final Set<String> gone = new HashSet<>();
  private final AtOnce<String> two = new AtOnce<>(2, gone::contains);

  @Test
  void soManyAndNoMoreAndOthersForThemselves() {
    assertTrue(two.enter("a", "1"));
    assertTrue(two.enter("a", "2"));
    assertFalse(two.enter("a", "3"));
    assertTrue(two.enter("b", "4"));
    two.leave("a", "1");
    assertTrue(two.enter("a", "3"));
    assertFalse(two.enter("a", "5"));
  }

  @Test
  void whoLeavesTwiceMakesRoomForOne() {
    two.enter("a", "1");
    two.enter("a", "2");
    two.leave("a", "1");
    two.leave("a", "1");
    assertTrue(two.enter("a", "3"));
    assertFalse(two.enter("a", "4"));
  }

  @Test
  void aCallThatIsGoneMakesRoomThoughNobodyCountedItOut() {
    two.enter("a", "1");
    two.enter("a", "2");
    assertFalse(two.enter("a", "3"));
    gone.add("2");
    assertTrue(two.enter("a", "3"));
    assertFalse(two.enter("a", "4"));
  }

  /** As a connection is held while its answer is written, and what asks about the call wants it. */
  @Test
  void nothingIsHeldWhileACallIsAskedWhetherItIsOver() {
    Object connection = new Object();
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch held = new CountDownLatch(1);
    AtOnce<String> one =
        new AtOnce<>(
            1,
            call -> {
              asked.countDown();
              await(held);
              synchronized (connection) {
                return false;
              }
            });
    one.enter("a", "1");
    assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          CompletableFuture<Boolean> second =
              CompletableFuture.supplyAsync(() -> one.enter("a", "2"));
          await(asked);
          synchronized (connection) {
            held.countDown();
            one.leave("a", "1");
          }
          second.join();
        });
    assertTrue(one.enter("a", "3"));
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void zeroIsNoLimit() {
    AtOnce<String> all = new AtOnce<>(0, call -> false);
    assertTrue(IntStream.range(0, 1000).allMatch(i -> all.enter("a", "call " + i)));
  }

  @Test
  void manyThreadsNeverGetInMoreThanMay() {
    AtOnce<Integer> seven = new AtOnce<>(7, call -> false);
    AtomicInteger inside = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    IntStream.range(0, 20_000)
        .parallel()
        .forEach(
            call -> {
              if (seven.enter("a", call)) {
                most.accumulateAndGet(inside.incrementAndGet(), Math::max);
                inside.decrementAndGet();
                seven.leave("a", call);
              }
            });
    assertTrue(most.get() <= 7, "at once " + most);
    assertEquals(
        7, IntStream.range(0, 20).filter(call -> seven.enter("a", call)).count(), "all have left");
  }
}
