package coldround.feed.edge;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** How web hooks are delivered; what each figure is good for stands in application.properties. */
@ConfigMapping(prefix = "coldround.hooks")
interface HooksConfig {

  /** Blocks of addresses that are not public and may be called all the same. */
  Optional<List<String>> allowed();

  List<Duration> pauses();

  @WithDefault("0.2")
  double jitter();

  @WithDefault("5s")
  Duration connectLimit();

  @WithDefault("15s")
  Duration answerLimit();

  @WithDefault("3")
  int deadLettersInARow();

  @WithDefault("24h")
  Duration oldSecretValid();

  @WithDefault("250ms")
  Duration look();

  @WithDefault("100")
  int most();
}
