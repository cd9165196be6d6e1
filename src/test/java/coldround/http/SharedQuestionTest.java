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

  /** Counts how often it is asked; the first time it waits to be let go on. */
  private static final class Held implements Supplier<Integer> {
    private final AtomicInteger asked = new AtomicInteger();
    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch goOn = new CountDownLatch(1);

    @Override
    public Integer get() {
      int number = asked.incrementAndGet();
      if (number == 1) {
        begun.countDown();
        waitFor(goOn);
      }
      return number;
    }
  }

  /** Who asks first, and is held. */
  private static Thread first(SharedQuestion<Integer> question, Held held) {
    Thread first = new Thread(question::answer);
    first.start();
    waitFor(held.begun);
    return first;
  }

  /** What those are told, or what is thrown to them, who came while the first one was held. */
  private List<Future<Integer>> cameMeanwhile(SharedQuestion<Integer> question, Held held)
      throws InterruptedException {
    Thread first = first(question, held);
    CountDownLatch come = new CountDownLatch(CALLERS);
    List<Thread> waiting = new ArrayList<>();
    List<Future<Integer>> all =
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
    held.goOn.countDown();
    first.join();
    return all;
  }

  @Test
  void allWhoCameMeanwhileShareTheNextOne() throws Exception {
    Held held = new Held();
    for (Future<Integer> one : cameMeanwhile(new SharedQuestion<>(held), held)) {
      assertEquals(2, one.get());
    }
  }

  @Test
  void oneThatGetsNoAnswerHoldsNobodyUpForLong() throws Exception {
    Held held = new Held();
    SharedQuestion<Integer> question = new SharedQuestion<>(held);
    Thread first = first(question, held);
    for (Future<Integer> one : each(question::answer)) {
      assertTrue(one.get(10, TimeUnit.SECONDS) > 1);
    }
    assertTrue(first.isAlive());
    held.goOn.countDown();
    first.join();
  }

  @Test
  void aFaultIsForThoseWhoWaitedForItAlone() throws Exception {
    Held held = new Held();
    SharedQuestion<Integer> question =
        new SharedQuestion<>(
            () -> {
              int number = held.get();
              if (number == 2) {
                throw new IllegalStateException("away");
              }
              return number;
            });
    for (Future<Integer> one : cameMeanwhile(question, held)) {
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
