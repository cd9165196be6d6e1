package coldround.fleet;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * Which day it is, at a site in its own time zone.
 *
 * @param usual zone of the contractor, for sites whose zone is not known
 */
public record Today(Clock clock, ZoneId usual) {

  public LocalDate at(Site site) {
    return LocalDate.now(clock.withZone(site.timeZone() == null ? usual : site.timeZone()));
  }

  public LocalDate usually() {
    return LocalDate.now(clock.withZone(usual));
  }
}
