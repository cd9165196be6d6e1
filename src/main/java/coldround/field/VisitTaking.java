package coldround.field;

import coldround.fleet.Visit;
import java.util.Optional;
import java.util.Set;

/** Takes visits in and judges their readings, for whoever shows a form of its own. */
public interface VisitTaking {

  /**
   * A visit as it stands in the store.
   *
   * @param tag tells this state of it from any other
   */
  record Taken(Visit visit, String tag, Judgement judgement) {}

  /**
   * What is to be done.
   *
   * @param visit with a number; silent about what stays as it is
   * @param emptied columns whose stored value goes
   * @param seen tag of the visit as the sender saw it; empty where there was none
   */
  record Sending(String unitId, FieldVisit visit, Set<String> emptied, String seen) {
    public Sending {
      emptied = Set.copyOf(emptied);
    }
  }

  Optional<Taken> stored(String unitId, String number);

  /** Stores the visit; refuses when it is not as its sender saw it, or when a field is wrong. */
  Taken take(Sending sending);

  /** What would be said of the readings, with nothing stored. */
  Judgement tried(Sending sending);
}
