package coldround.app;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import java.io.File;
import java.nio.file.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;

/**
 * Why the service should be given no calls, at /q/health/ready, beside the database that is asked
 * for anyhow. What is late but does not hinder calls is told there too and is no reason.
 */
class Readiness {

  private final Watching watching;
  private final Path data;
  private final long least;

  @Inject
  Readiness(
      Watching watching,
      @ConfigProperty(name = "coldround.data") String data,
      @ConfigProperty(name = "coldround.health.least-free-megabytes") long least) {
    this.watching = watching;
    this.data = Path.of(data);
    this.least = least;
  }

  @Produces
  @org.eclipse.microprofile.health.Readiness
  HealthCheck space() {
    return () -> space(free(data), free(Path.of(System.getProperty("java.io.tmpdir"))), least);
  }

  /**
   * @param store megabytes that are free where the store is
   * @param files megabytes that are free where files wait to be taken
   */
  static HealthCheckResponse space(long store, long files, long least) {
    var answer =
        HealthCheckResponse.named("disk space")
            .withData("storeMegabytes", store)
            .withData("filesMegabytes", files)
            .status(store >= least && files >= least);
    if (store < least || files < least) {
      answer.withData(
          "reason",
          "less than %d MB are free (coldround.health.least-free-megabytes): make room"
              .formatted(least));
    }
    return answer.build();
  }

  /** A folder that is not there yet lies where the nearest one above it does. */
  private static long free(Path folder) {
    File at = folder.toAbsolutePath().normalize().toFile();
    while (at != null && !at.exists()) {
      at = at.getParentFile();
    }
    return at == null ? 0 : at.getUsableSpace() >> 20;
  }

  @Produces
  @org.eclipse.microprofile.health.Readiness
  HealthCheck feed() {
    return () -> {
      Watching.Feed feed = watching.feed();
      Watching.Hooks hooks = watching.hooks();
      return HealthCheckResponse.named("feed")
          .withData("waiting", feed.waiting())
          .withData("lagSeconds", Math.round(feed.lagSeconds()))
          .withData("subscribersBehind", hooks.behind())
          .withData("deadLetters", hooks.letters())
          .withData("subscriptionsStopped", hooks.stopped())
          .up()
          .build();
    };
  }

  @Produces
  @org.eclipse.microprofile.health.Readiness
  HealthCheck scores() {
    return () -> {
      Watching.Scores scores = watching.scores();
      return HealthCheckResponse.named("scores")
          .withData("units", scores.units())
          .withData("lagDays", scores.lagDays())
          .up()
          .build();
    };
  }
}
