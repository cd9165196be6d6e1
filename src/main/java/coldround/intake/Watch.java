package coldround.intake;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.LongSupplier;

/** Follows one import: told by the thread that does it, asked by others at any time. */
public final class Watch {

  private final Clock clock;
  private Progress.State state = Progress.State.WAITING;
  private Instant began;
  private Instant readingEnded;
  private Instant readingBegan;
  private long rows;
  private long all;
  private LongSupplier bytesRead = () -> 0;
  private long done;
  private long toDo;

  public Watch(Clock clock) {
    this.clock = clock;
  }

  /**
   * @param bytes of the file; 0 where the bytes read say nothing of the rows still to come
   * @param read how many bytes have been read, to be asked from any thread
   */
  public synchronized void reading(long bytes, LongSupplier read) {
    state = Progress.State.READING;
    began = clock.instant();
    readingBegan = began;
    // a file may be taken once more
    readingEnded = null;
    rows = 0;
    all = bytes;
    bytesRead = read;
  }

  synchronized void rows(long done) {
    rows = done;
  }

  /** Rows are read; some of them are to be written still. */
  public void writing(long rowsHeld) {
    next(Progress.State.WRITING, rowsHeld);
  }

  /** Rows are done, units follow. */
  public void assessing(long units) {
    next(Progress.State.ASSESSING, units);
  }

  private synchronized void next(Progress.State now, long pieces) {
    state = now;
    began = clock.instant();
    readingEnded = readingEnded == null ? began : readingEnded;
    toDo = pieces;
    done = 0;
  }

  /** More of what the state has to do. */
  public synchronized void more(long pieces) {
    done += pieces;
  }

  /** How far it has come now. */
  public synchronized Progress now() {
    if (state == Progress.State.WAITING) {
      return Progress.waiting();
    }
    Instant now = clock.instant();
    Long written = state == Progress.State.WRITING ? done : null;
    return Progress.of(state, rows, pace(now), written, share(), began, now);
  }

  private Double share() {
    boolean reading = state == Progress.State.READING;
    long of = reading ? all : toDo;
    return of <= 0 ? null : Math.min(1.0, (double) (reading ? bytesRead.getAsLong() : done) / of);
  }

  private Double pace(Instant now) {
    Duration taken = Duration.between(readingBegan, readingEnded == null ? now : readingEnded);
    return rows == 0 || taken.isZero() ? null : rows * 1000.0 / Math.max(1, taken.toMillis());
  }
}
