package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class SharedQuestionTest {

  private static final int CALLERS = 6;

  private final ExecutorService threads = Executors.newCachedThreadPool();

  @AfterEach
  void end() {
    threads.shutdownNow();
  }

  private <T> CompletableFuture<T> ask(SharedQuestion<T> question) {
    return question.answer().toCompletableFuture();
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
            },
            threads);
    Callable<Void> call =
        () -> {
          for (int i = 0; i < 2_000; i++) {
            int mine = written.incrementAndGet();
            int answer = ask(question).get();
            assertTrue(answer >= mine, answer + " was told to who had written " + mine);
          }
          return null;
        };
    List<Future<Void>> all = new ArrayList<>();
    for (int i = 0; i < CALLERS; i++) {
      all.add(threads.submit(call));
    }
    for (Future<Void> one : all) {
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

  /** The answers of those who come while the first question is on its way. */
  private List<CompletableFuture<Integer>> whileTheFirstIsAsked(
      SharedQuestion<Integer> question, Held held) {
    ask(question);
    waitFor(held.begun);
    List<CompletableFuture<Integer>> all = new ArrayList<>();
    for (int i = 0; i < CALLERS; i++) {
      all.add(ask(question));
    }
    return all;
  }

  @Test
  void allWhoComeMeanwhileShareTheNextOne() throws Exception {
    Held held = new Held();
    List<CompletableFuture<Integer>> all =
        whileTheFirstIsAsked(new SharedQuestion<>(held, threads), held);
    held.goOn.countDown();
    for (CompletableFuture<Integer> one : all) {
      assertEquals(2, one.get());
    }
  }

  @Test
  void oneThatGetsNoAnswerHoldsNobodyUpForLong() throws Exception {
    Held held = new Held();
    SharedQuestion<Integer> question = new SharedQuestion<>(held, threads);
    for (CompletableFuture<Integer> one : whileTheFirstIsAsked(question, held)) {
      fails(one, TimeoutException.class);
    }
    assertTrue(ask(question).isCompletedExceptionally(), "at once, as long as it hangs");
    held.goOn.countDown();
    while (ask(question).handle((answer, fault) -> fault != null).get()) {
      Thread.sleep(1);
    }
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
            },
            threads);
    List<CompletableFuture<Integer>> all = whileTheFirstIsAsked(question, held);
    held.goOn.countDown();
    for (CompletableFuture<Integer> one : all) {
      fails(one, IllegalStateException.class);
    }
    assertEquals(3, ask(question).get());
  }

  @Test
  void whereNobodyIsThereToAskItFails() throws Exception {
    threads.shutdown();
    SharedQuestion<Integer> question = new SharedQuestion<>(() -> 1, threads);
    for (int i = 0; i < 2; i++) {
      fails(ask(question), RejectedExecutionException.class);
    }
  }

  private static void fails(CompletableFuture<Integer> one, Class<? extends Exception> why) {
    ExecutionException told = assertThrows(ExecutionException.class, one::get);
    assertEquals(why, told.getCause().getClass());
  }

  private static void waitFor(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
