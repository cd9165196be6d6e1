package coldround.intake;

import coldround.quantity.Measure;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What reading a cell depends on beside its column.
 *
 * @param refrigerants known designations, such as R-404A
 * @param readings columns that the long form may name as quantity
 * @param today the day of the import
 */
public record CellRules(
    Codes codes,
    Profile profile,
    Set<String> refrigerants,
    Map<String, Column> readings,
    LocalDate today) {

  public CellRules {
    refrigerants = Set.copyOf(refrigerants);
    readings = Map.copyOf(readings);
  }

  Optional<Measure> measure(String text) {
    return profile.measure(text);
  }
}
