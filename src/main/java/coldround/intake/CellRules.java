package coldround.intake;

import coldround.quantity.Measure;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/**
 * What reading a cell depends on beside its column.
 *
 * @param readings columns that the long form may name as quantity
 * @param today the day of the import
 */
public record CellRules(
    Codes codes,
    Profile profile,
    KnownRefrigerants refrigerants,
    Map<String, Column> readings,
    LocalDate today) {

  public CellRules {
    readings = Map.copyOf(readings);
  }

  Optional<Measure> measure(String text) {
    return profile.measure(text);
  }
}
