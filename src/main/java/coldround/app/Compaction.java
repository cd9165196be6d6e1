package coldround.app;

import coldround.store.Embedded;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.File;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.h2.mvstore.FileStore;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.MVStoreException;

/**
 * Gives room in the file of the embedded database back. Each commit writes the pages it changes to
 * a new place, and the place of the old ones is free only when nothing near them is needed any
 * more. The database moves what is needed together by itself, but only where it may keep commits in
 * memory for a while, which WRITE_DELAY=0 excludes: the file of a hundred thousand units grew to
 * fourteen gigabytes around one, and on. Compacted, it does not become smaller, but its room is
 * used again. How much and how often is by trial: docs/benchmarks.md, the file of the embedded
 * database.
 */
@ApplicationScoped
class Compaction {

  /** With less than this share of what was written still needed, in percent, it is moved. */
  private static final int NEEDED_IDLE = 70;

  /** The same while others write: it can wait until they are done, but not for ever. */
  private static final int NEEDED_BUSY = 25;

  private static final int WHATEVER_IS_NEEDED = 101;

  /** So much is moved in one go, for which commits wait. */
  private static final int STEP_IDLE = 4 << 20;

  private static final int STEP_BUSY = 256 << 10;
  private static final int STEPS_A_SECOND = 8;

  /** So few commits since the last step are those of the service itself, which looks for work. */
  private static final int QUIET = 10;

  private static final Duration PAUSE = Duration.ofMillis(80);

  private static final long LEAST_FREE = 64 << 20;

  private final DataSource store;
  private boolean embedded;
  private boolean failing;
  private long version;

  @Inject
  Compaction(DataSource store) {
    this.store = store;
  }

  void atStart(@Observes StartupEvent start) throws SQLException {
    try (Connection connection = store.getConnection()) {
      embedded = Embedded.behind(connection).isPresent();
    }
  }

  @Scheduled(every = "1s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void run() throws InterruptedException {
    if (!embedded) {
      return;
    }
    try {
      steps();
      failing = false;
    } catch (SQLException | MVStoreException e) {
      // calls tell of a store that is away, once is enough here
      if (!failing) {
        Log.warnf("room in the file of the database is not given back for now: %s", e);
      }
      failing = true;
    }
  }

  void steps() throws SQLException, InterruptedException {
    try (Connection connection = store.getConnection()) {
      Optional<Embedded> open = Embedded.behind(connection);
      if (open.isPresent()) {
        steps(open.get().file());
      }
    }
  }

  private void steps(MVStore file) throws InterruptedException {
    for (int i = 0; i < STEPS_A_SECOND && isRoomFor(file) && step(file); i++) {
      Thread.sleep(PAUSE.toMillis());
    }
  }

  /** Not in memory, and not where what is moved might be what fills the disk. */
  private static boolean isRoomFor(MVStore file) {
    return file.getFileStore() != null
        && new File(file.getFileStore().getFileName()).getUsableSpace() > LEAST_FREE;
  }

  /** Whether there may be more to do. */
  private boolean step(MVStore file) {
    boolean busy = file.getCurrentVersion() - version > QUIET;
    boolean moved =
        needed(file.getFileStore()) < (busy ? NEEDED_BUSY : NEEDED_IDLE)
            && file.compact(WHATEVER_IS_NEEDED, busy ? STEP_BUSY : STEP_IDLE);
    if (moved) {
      // else the next call that commits would write them as well
      file.tryCommit();
    }
    version = file.getCurrentVersion();
    return moved;
  }

  /**
   * The share, in percent, of what was written long enough ago to be moved: places that have just
   * become free are kept for a while, and would look like work that is still to be done.
   */
  private static int needed(FileStore<?> file) {
    Map<String, String> told = new HashMap<>();
    file.populateInfo(told::put);
    return Integer.parseInt(told.get("info.CHUNKS_FILL_RATE_RW"));
  }
}
