package coldround.scoring;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The condensing split of one visit: condensing temperature less the air entering the condenser.
 *
 * @param visit number of the visit
 * @param ambientC air entering the condenser, where read
 * @param condensingC midpoint of bubble and dew at the head pressure, where it can be told
 * @param splitK where both are there
 * @param asFound true for a reading taken to be from before the cleaning of the same visit
 * @param leftOut why the reading is shown but not computed with; empty when it is used
 */
public record SplitReading(
    LocalDate date,
    String visit,
    OptionalDouble ambientC,
    OptionalDouble condensingC,
    OptionalDouble splitK,
    boolean asFound,
    Optional<Reason> leftOut) {

  /**
   * @throws IllegalArgumentException when a reading without a split is not left out
   */
  public SplitReading {
    if (splitK.isEmpty() && leftOut.isEmpty()) {
      throw new IllegalArgumentException("visit " + visit + " has no split and no reason why");
    }
  }

  public boolean used() {
    return leftOut.isEmpty();
  }
}
