package coldround.feed;

import java.time.Duration;
import java.util.List;

/**
 * When a change that could not be delivered is tried again.
 *
 * @param pauses before the second try, the third and so on; after the last it is a dead letter
 * @param jitter share by which a pause is longer or shorter by chance, so that subscribers that
 *     failed together do not come back together
 */
public record Retrying(List<Duration> pauses, double jitter) {

  public Retrying {
    pauses = List.copyOf(pauses);
    if (pauses.stream().anyMatch(pause -> pause.isNegative() || pause.isZero())) {
      throw new IllegalArgumentException("a pause is longer than nothing");
    }
    for (int i = 1; i < pauses.size(); i++) {
      if (pauses.get(i).compareTo(pauses.get(i - 1)) < 0) {
        throw new IllegalArgumentException("pauses grow: " + pauses);
      }
    }
    if (!(jitter >= 0 && jitter < 1)) {
      throw new IllegalArgumentException("jitter is a share from 0 to below 1, not " + jitter);
    }
  }

  /** True when no further try follows. */
  public boolean isLast(int tries) {
    return tries > pauses.size();
  }

  /**
   * @param tries that have failed, at least one
   * @param chance from 0 to 1
   * @param asked by the subscriber (Retry-After); zero for nothing
   */
  public Duration pause(int tries, double chance, Duration asked) {
    double share = 1 + jitter * (2 * chance - 1);
    Duration ours = Duration.ofMillis(Math.round(pauses.get(tries - 1).toMillis() * share));
    Duration theirs = asked.compareTo(longest()) > 0 ? longest() : asked;
    return ours.compareTo(theirs) > 0 ? ours : theirs;
  }

  /** No wait is longer, whatever the clock says. */
  public Duration longest() {
    Duration last = pauses.isEmpty() ? Duration.ZERO : pauses.get(pauses.size() - 1);
    return Duration.ofMillis(Math.round(last.toMillis() * (1 + jitter)));
  }
}
