package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class SharedQuestionTest {

  private static final int CALLERS = 6;

  private final ExecutorService callers = Executors.newFixedThreadPool(CALLERS);

  @AfterEach
  void end() {
    callers.shutdownNow();
  }

  private <T> List<Future<T>> each(Callable<T> call) {
    List<Future<T>> all = new ArrayList<>();
    for (int i = 0; i < CALLERS; i++) {
      all.add(callers.submit(call));
    }
    return all;
  }

  @Test
  void noAnswerIsOlderThanTheCall() throws Exception {
    AtomicInteger written = new AtomicInteger();
    SharedQuestion<Integer> question =
        new SharedQuestion<>(
            () -> {
              int found = written.get();
              Thread.yield();
              return found;
            });
    Callable<Void> call =
        () -> {
          for (int i = 0; i < 2_000; i++) {
            int mine = written.incrementAndGet();
            int answer = question.answer();
            assertTrue(answer >= mine, answer + " was told to who had written " + mine);
          }
          return null;
        };
    for (Future<Void> one : each(call)) {
      one.get();
    }
  }

  /**
   * A question that waits to be let go on, with callers that came while it was on its way.
   *
   * @return what they were told, or threw
   */
  private <T> List<Future<T>> cameMeanwhile(
      SharedQuestion<T> question, CountDownLatch begun, CountDownLatch goOn) throws Exception {
    Thread before = new Thread(question::answer);
    before.start();
    begun.await();
    CountDownLatch come = new CountDownLatch(CALLERS);
    List<Thread> waiting = new ArrayList<>();
    List<Future<T>> all =
        each(
            () -> {
              synchronized (waiting) {
                waiting.add(Thread.currentThread());
              }
              come.countDown();
              return question.answer();
            });
    come.await();
    while (!waiting.stream().allMatch(SharedQuestionTest::waits)) {
      Thread.sleep(1);
    }
    goOn.countDown();
    before.join();
    return all;
  }

  @Test
  void allWhoCameMeanwhileShareTheNextOne() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    AtomicInteger asked = new AtomicInteger();
    Supplier<Integer> slow =
        () -> {
          int number = asked.incrementAndGet();
          begun.countDown();
          waitFor(goOn);
          return number;
        };
    for (Future<Integer> one : cameMeanwhile(new SharedQuestion<>(slow), begun, goOn)) {
      assertEquals(2, one.get());
    }
  }

  @Test
  void oneThatGetsNoAnswerHoldsNobodyUpForLong() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch never = new CountDownLatch(1);
    AtomicInteger asked = new AtomicInteger();
    Supplier<Integer> hung =
        () -> {
          int number = asked.incrementAndGet();
          if (number == 1) {
            begun.countDown();
            waitFor(never);
          }
          return number;
        };
    SharedQuestion<Integer> question = new SharedQuestion<>(hung);
    Thread first = new Thread(question::answer);
    first.start();
    begun.await();
    for (Future<Integer> one : each(question::answer)) {
      assertTrue(one.get(10, TimeUnit.SECONDS) > 1);
    }
    assertTrue(first.isAlive());
    never.countDown();
    first.join();
  }

  @Test
  void aFaultIsForThoseWhoWaitedForItAlone() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    AtomicInteger asked = new AtomicInteger();
    Supplier<Integer> faulty =
        () -> {
          int number = asked.incrementAndGet();
          begun.countDown();
          waitFor(goOn);
          if (number == 2) {
            throw new IllegalStateException("away");
          }
          return number;
        };
    SharedQuestion<Integer> question = new SharedQuestion<>(faulty);
    for (Future<Integer> one : cameMeanwhile(question, begun, goOn)) {
      Exception told = assertThrows(Exception.class, one::get);
      assertEquals(IllegalStateException.class, told.getCause().getClass());
    }
    assertEquals(3, question.answer());
  }

  private static boolean waits(Thread thread) {
    return thread.getState() == Thread.State.WAITING
        || thread.getState() == Thread.State.TIMED_WAITING;
  }

  private static void waitFor(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
