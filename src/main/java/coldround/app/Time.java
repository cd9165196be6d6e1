package coldround.app;

import coldround.fleet.Today;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** The one clock, so that tests can set it, and the day it is. */
class Time {

  @Produces
  @Singleton
  Clock clock() {
    return Clock.systemUTC();
  }

  /** The contractor's zone is that of the machine unless coldround.time-zone says otherwise. */
  @Produces
  @Singleton
  Today today(Clock clock, @ConfigProperty(name = "coldround.time-zone") Optional<String> zone) {
    return new Today(clock, zone.map(ZoneId::of).orElseGet(ZoneId::systemDefault));
  }
}
