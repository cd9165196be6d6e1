package coldround.intake.edge;

import coldround.http.Caller;
import coldround.http.Problem;
import coldround.http.StoreFaults;
import coldround.intake.Receipt;
import coldround.intake.UnreadableFile;
import io.quarkus.logging.Log;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.eclipse.microprofile.context.ThreadContext;
import org.hibernate.exception.ConstraintViolationException;
import org.hibernate.exception.DataException;

/** Imports under way, of those who wait and of those who ask later. */
@ApplicationScoped
class ImportRuns {

  private static final int MOST_WAITING = 20;
  private static final Duration LONGEST_END = Duration.ofSeconds(20);

  /** An import that can be asked how far it is. */
  record Open(FileImport.Begun begun, FileImport.Order order, Caller.Acting asked) {
    RunView view() {
      return RunView.of(begun, order);
    }
  }

  private final FileImport imports;
  private final StoredRuns runs;
  private final Caller caller;
  private final Map<String, Open> open = new ConcurrentHashMap<>();
  private final ManagedExecutor executor =
      ManagedExecutor.builder()
          .maxAsync(1)
          .maxQueued(MOST_WAITING)
          .propagated()
          .cleared(ThreadContext.ALL_REMAINING)
          .build();

  @Inject
  ImportRuns(FileImport imports, StoredRuns runs, Caller caller) {
    this.imports = imports;
    this.runs = runs;
    this.caller = caller;
  }

  /**
   * Files are given up at their next row, and whoever asks later is told. Nobody is interrupted:
   * the embedded database closes its file where that meets it writing.
   */
  void atEnd(@Observes ShutdownEvent end) throws InterruptedException {
    imports.end();
    executor.shutdown();
    long last = System.nanoTime() + LONGEST_END.toNanos();
    while (!open.isEmpty() && System.nanoTime() < last) {
      Thread.sleep(20);
    }
  }

  @Scheduled(every = "5s", delayed = "5s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void beat() {
    runs.beat(List.copyOf(open.keySet()));
  }

  Optional<Open> find(String id) {
    return Optional.ofNullable(open.get(id));
  }

  /**
   * In the thread of the caller.
   *
   * @throws Problem 422 for a file that cannot be used
   */
  Receipt now(Spool file, FileImport.Order order) {
    Open one = new Open(imports.begin(), order, caller.acting());
    open.put(one.begun().id(), one);
    try {
      return take(file, one);
    } finally {
      open.remove(one.begun().id());
    }
  }

  /** A file that is taken later, and what becomes of it. */
  record Later(Open open, CompletableFuture<Receipt> receipt) {}

  /**
   * Behind the files that wait already.
   *
   * @param file closed when it is done
   * @throws Problem 503 when too many wait
   */
  Later later(Spool file, FileImport.Order order) {
    Open one = new Open(imports.begin(), order, caller.acting());
    CompletableFuture<Receipt> receipt = new CompletableFuture<>();
    open.put(one.begun().id(), one);
    runs.open(one.begun(), order);
    try {
      executor.execute(() -> caller.act(one.asked(), () -> work(file, one, receipt)));
    } catch (RejectedExecutionException e) {
      open.remove(one.begun().id());
      runs.finished(one.begun().id());
      throw new Problem(
              503,
              "busy",
              "Too many files are waiting",
              MOST_WAITING + " files are waiting to be taken. Send it again later.",
              List.of())
          .with("Retry-After", "60");
    }
    return new Later(one, receipt);
  }

  private void work(Spool file, Open one, CompletableFuture<Receipt> receipt) {
    String id = one.begun().id();
    try (file) {
      Receipt done = take(file, one);
      runs.finished(id);
      receipt.complete(done);
    } catch (Problem refusal) {
      refused(id, refusal, receipt);
    } catch (RuntimeException | Error e) {
      Problem passing = StoreFaults.of(e).or(() -> StoreFaults.busy(e)).orElse(null);
      // whatever it was, the sender must see that nothing more comes; the log keeps the rest
      Log.error("import " + id + " failed", e);
      refused(id, passing == null ? failed(id) : passing, receipt);
    } finally {
      // last, so that whoever asks meanwhile does not find it nowhere
      open.remove(id);
    }
  }

  private void refused(String id, Problem why, CompletableFuture<Receipt> receipt) {
    runs.refused(id, why);
    receipt.completeExceptionally(why);
  }

  private static Problem failed(String id) {
    return new Problem(
        500,
        "import-failed",
        "The file could not be taken; nothing was applied",
        "That is a fault of the service; its log has more under import " + id + ".",
        List.of());
  }

  /**
   * Where a visit of the file came from the field meanwhile, the file is laid over it next time.
   */
  private Receipt run(Spool file, Open one) {
    try {
      return imports.run(file.file(), one.order(), one.begun());
    } catch (PersistenceException clash) {
      if (!(clash instanceof ConstraintViolationException) && StoreFaults.busy(clash).isEmpty()) {
        throw clash;
      }
      Log.infof("import %s met what came meanwhile and is taken again", one.begun().id());
      return imports.run(file.file(), one.order(), one.begun());
    }
  }

  static Problem problem(UnreadableFile refusal) {
    return Problem.unprocessable(
        refusal.code(), "The file cannot be used; nothing was applied", refusal.getMessage());
  }

  /**
   * One that has no receipt and is not under way.
   *
   * @throws Problem 404 where there never was one
   */
  RunView ended(String id) {
    RunRow row = runs.find(id).orElseThrow(() -> Problem.notFound("import '" + id + "'"));
    return RunView.of(row, runs.problem(row));
  }

  private Receipt take(Spool file, Open one) {
    try {
      return run(file, one);
    } catch (UnreadableFile refusal) {
      throw problem(refusal);
    } catch (DataException tooLong) {
      throw Problem.unprocessable(
          "too-long",
          "The file cannot be stored; nothing was applied",
          "A text or the readings of one visit are longer than the store keeps. Split them.");
    }
  }
}
