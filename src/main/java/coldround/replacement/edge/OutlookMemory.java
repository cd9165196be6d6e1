package coldround.replacement.edge;

import coldround.fleet.UnitHistory;
import coldround.replacement.Terms;
import coldround.replacement.UnitOutlook;
import coldround.scoring.FaultPriors;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Outlooks as they were worked out last, for a page on which one assumption after another is moved.
 * One is given again only for the very same history, compared whole, the same years and the same
 * usual rates of faults; the other tables do not change while the service runs. So nothing in here
 * can be out of date.
 */
@ApplicationScoped
class OutlookMemory {

  private static final int MOST = 500;

  /** All that an outlook is worked out from, besides tables. */
  private record From(
      UnitHistory history, LocalDate asOf, int firstYear, int horizon, FaultPriors priors) {}

  private record Kept(From from, UnitOutlook outlook) {}

  private final Map<String, Kept> byUnit =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Kept> eldest) {
          return size() > MOST;
        }
      };

  UnitOutlook of(
      UnitHistory history, Terms terms, FaultPriors priors, Supplier<UnitOutlook> making) {
    From from = new From(history, terms.asOf(), terms.firstYear(), terms.horizon(), priors);
    Kept kept;
    synchronized (byUnit) {
      kept = byUnit.get(history.unit().id());
    }
    if (kept != null && kept.from.equals(from)) {
      return kept.outlook;
    }
    UnitOutlook made = making.get();
    synchronized (byUnit) {
      byUnit.put(history.unit().id(), new Kept(from, made));
    }
    return made;
  }
}
