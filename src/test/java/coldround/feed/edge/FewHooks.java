package coldround.feed.edge;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Settings of web hooks to this machine. */
final class FewHooks implements HooksConfig {

  private final int most;
  volatile Duration answerLimit = Duration.ofSeconds(50);

  FewHooks(int most) {
    this.most = most;
  }

  @Override
  public int most() {
    return most;
  }

  @Override
  public Duration answerLimit() {
    return answerLimit;
  }

  @Override
  public Optional<List<String>> allowed() {
    return Optional.of(List.of("127.0.0.0/8"));
  }

  @Override
  public List<Duration> pauses() {
    return List.of(Duration.ofMillis(50));
  }

  @Override
  public double jitter() {
    return 0;
  }

  @Override
  public Duration connectLimit() {
    return Duration.ofSeconds(20);
  }

  @Override
  public int deadLettersInARow() {
    return 3;
  }

  @Override
  public Duration oldSecretValid() {
    return Duration.ofHours(1);
  }

  @Override
  public Duration look() {
    return Duration.ofMillis(50);
  }
}
