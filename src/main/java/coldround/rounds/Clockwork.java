package coldround.rounds;

import java.time.Duration;
import java.time.Instant;

/** Minutes since a zero common to a plan, as the search counts them. */
record Clockwork(Instant zero) {

  double minute(Instant instant) {
    return Duration.between(zero, instant).toMillis() / 60_000.0;
  }

  Instant instant(double minute) {
    return zero.plusMillis(Math.round(minute * 60_000));
  }
}
