package coldround.intake;

import coldround.quantity.Measure;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What reading a cell depends on beside its column.
 *
 * @param readings columns that the long form may name as quantity
 * @param today the day of the import
 * @param dates what the dates of a column of the file, by its name, prove of their order
 */
public record CellRules(
    Codes codes,
    Profile profile,
    KnownRefrigerants refrigerants,
    Map<String, Column> readings,
    LocalDate today,
    Function<String, DateEvidence> dates) {

  public CellRules {
    readings = Map.copyOf(readings);
  }

  /** The same for a file that can be asked for the order of its dates. */
  public CellRules with(Function<String, DateEvidence> datesOfFile) {
    return new CellRules(codes, profile, refrigerants, readings, today, datesOfFile);
  }

  Optional<Measure> measure(String text) {
    return profile.measure(text);
  }
}
