package coldround.rounds;

import java.time.Duration;
import java.time.Instant;

/** A stretch of time from an instant to a later one. */
public record Span(Instant from, Instant to) {

  public double minutes() {
    return Duration.between(from, to).toSeconds() / 60.0;
  }

  /** True when they have more than one instant in common. */
  public boolean meets(Span other) {
    return from.isBefore(other.to) && other.from.isBefore(to);
  }

  /** What they have in common, if they meet. */
  public Span common(Span other) {
    return new Span(
        from.isAfter(other.from) ? from : other.from, to.isBefore(other.to) ? to : other.to);
  }
}
