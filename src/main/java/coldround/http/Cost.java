package coldround.http;

import coldround.fleet.FleetSize;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refuses calls that would work through the histories of more units than one call may. */
@ApplicationScoped
public class Cost {

  private final FleetSize fleet;
  private final long most;

  @Inject
  Cost(FleetSize fleet, @ConfigProperty(name = "coldround.cost.most-units") long most) {
    this.fleet = fleet;
    this.most = most;
  }

  /**
   * @param field that names the customer
   * @param customer code; null or empty for all
   * @throws Problem 413 for too many units
   */
  public void check(String field, String customer) {
    String code = customer == null ? "" : customer;
    long units = fleet.units(code);
    if (most > 0 && units > most) {
      String says =
          "asks for the histories of %d units; one call works through at most %d (coldround.cost.most-units). %s"
              .formatted(
                  units, most, code.isEmpty() ? "Name one customer." : "Export them instead.");
      throw new Problem(
          413,
          "too-many-units",
          "More units are asked for than one call works through",
          field + ": " + says,
          List.of(new Problem.FieldError(field, code, says)));
    }
  }
}
