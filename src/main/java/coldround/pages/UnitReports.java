package coldround.pages;

import java.time.Instant;
import java.util.Optional;

/** Where the page of a unit gets what it shows. */
public interface UnitReports {

  /**
   * How the unit stands at that moment, by the date of its site; empty when there is no such unit.
   */
  Optional<UnitReport> report(String unitId, Instant now);
}
