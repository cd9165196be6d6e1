package coldround.fleet;

import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One refrigeration or air-conditioning unit with one refrigerant circuit. Text that was not given
 * is empty.
 *
 * @param id opaque identity given by the store; empty before it is stored
 * @param tag natural key within customer and site
 * @param kind row of scoring/kinds.csv, such as walk-in-cooler
 * @param machine name that units of one machine share; empty for a machine of its own
 * @param installed null if unknown
 * @param refrigerant designation as on the nameplate, such as R-404A
 * @param condenserPlace outdoors, roof, indoors or attic
 * @param retired null while in use
 * @param plate measured columns of the equipment list by name, as given: charge, design_split,
 *     high_cutout, low_cutout, head_control, compressor_rated, condenser_fan_rated,
 *     evaporator_fan_rated, supply, box_setpoint, replacement_cost
 */
public record Unit(
    String id,
    String customer,
    String site,
    String tag,
    String kind,
    String machine,
    String maker,
    String model,
    String serial,
    LocalDate installed,
    String refrigerant,
    String condenserPlace,
    LocalDate retired,
    Map<String, Quantity> plate) {

  public Unit {
    plate = Map.copyOf(plate);
  }

  /** A nameplate or settings value as it was given. */
  public Optional<Quantity> plate(String column) {
    return Optional.ofNullable(plate.get(column));
  }

  /** The same in the unit used inside; pressures stay gauge or absolute as given. */
  public OptionalDouble plateBase(String column) {
    Quantity value = plate.get(column);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.base());
  }

  public boolean inUse(LocalDate asOf) {
    return retired == null || asOf.isBefore(retired);
  }
}
