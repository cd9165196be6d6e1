package coldround.fleet;

import coldround.quantity.Atmosphere;
import coldround.quantity.Quantity;
import java.time.ZoneId;
import java.util.Optional;

/**
 * One address of a customer. Text that was not given is empty, other things not given are null.
 *
 * @param customer code of the customer
 * @param code natural key within the customer
 * @param latitude degrees north, null if unknown
 * @param longitude degrees east, null if unknown
 * @param elevation height over sea level, null if unknown
 * @param timeZone IANA zone, null if unknown
 * @param jurisdiction ISO 3166 country with optional subdivision, such as US or US-CA; may be empty
 * @param surroundings clean, dusty, greasy or outdoor; empty if unknown
 * @param visitingHours opening-hours syntax; empty for always
 * @param designAmbient air temperature the equipment must cope with, null if unknown
 */
public record Site(
    String customer,
    String code,
    String name,
    String address,
    Double latitude,
    Double longitude,
    Quantity elevation,
    ZoneId timeZone,
    String jurisdiction,
    String surroundings,
    String visitingHours,
    Quantity designAmbient) {

  /**
   * Air pressure there in kPa by the standard atmosphere; sea level where the height is unknown.
   */
  public double atmosphereKpa() {
    return elevation == null
        ? Atmosphere.SEA_LEVEL_KPA
        : Atmosphere.pressureKpa(elevation.base() * 1000);
  }

  public Optional<Quantity> knownDesignAmbient() {
    return Optional.ofNullable(designAmbient);
  }
}
