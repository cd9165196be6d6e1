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
  private long doneUnits;
  private long units;

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
    all = bytes;
    bytesRead = read;
  }

  synchronized void rows(long done) {
    rows = done;
  }

  /** Rows are done, units follow. */
  public synchronized void assessing(long toAssess) {
    state = Progress.State.ASSESSING;
    began = clock.instant();
    readingEnded = began;
    units = toAssess;
  }

  public synchronized void assessed(long more) {
    doneUnits += more;
  }

  /** How far it has come now. */
  public synchronized Progress now() {
    if (state == Progress.State.WAITING) {
      return Progress.waiting();
    }
    Instant now = clock.instant();
    return Progress.of(state, rows, pace(now), share(), began, now);
  }

  private Double share() {
    long done = state == Progress.State.READING ? bytesRead.getAsLong() : doneUnits;
    long of = state == Progress.State.READING ? all : units;
    return of <= 0 ? null : Math.min(1.0, (double) done / of);
  }

  private Double pace(Instant now) {
    Duration taken = Duration.between(readingBegan, readingEnded == null ? now : readingEnded);
    return rows == 0 || taken.isZero() ? null : rows * 1000.0 / Math.max(1, taken.toMillis());
  }
}
