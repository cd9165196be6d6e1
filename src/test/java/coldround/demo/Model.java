package coldround.demo;

import coldround.table.TableRow;
import java.util.OptionalDouble;

/**
 * A row of the invented makers' catalogue, in the units of an American nameplate.
 *
 * @param splitF clean condensing split
 * @param tdF evaporator temperature difference
 * @param setpointF empty for what cools no box
 */
record Model(
    String name,
    String kind,
    String maker,
    String refrigerant,
    double chargeLb,
    double compressorA,
    double condenserFanA,
    int condenserFans,
    double evaporatorFanA,
    int evaporatorFans,
    double supplyV,
    int phases,
    OptionalDouble cutoutPsig,
    OptionalDouble lowCutoutPsig,
    OptionalDouble headControlPsig,
    double splitF,
    double tdF,
    OptionalDouble setpointF,
    double costUsd,
    boolean ports) {

  static Model of(TableRow row) {
    return new Model(
        row.required("model"),
        row.required("kind"),
        row.required("maker"),
        row.required("refrigerant"),
        row.number("charge"),
        row.number("compressor"),
        row.number("condenser_fan"),
        row.whole("condenser_fans"),
        row.optionalNumber("evaporator_fan").orElse(0),
        row.whole("evaporator_fans"),
        row.number("supply"),
        row.whole("phases"),
        row.optionalNumber("cutout"),
        row.optionalNumber("low_cutout"),
        row.optionalNumber("head_control"),
        row.number("split"),
        row.number("td"),
        row.optionalNumber("setpoint"),
        row.number("cost"),
        row.required("ports").equals("yes"));
  }

  boolean airConditioning() {
    return kind.endsWith("air-conditioner") || (kind.equals("heat-pump") && !transcritical());
  }

  /** Above 31 °C CO2 condenses no more, so its head pressure tells no condensing temperature. */
  boolean transcritical() {
    return refrigerant.equals("R-744");
  }

  boolean freezer() {
    return kind.endsWith("freezer");
  }

  boolean hasDoor() {
    return kind.startsWith("walk-in") || kind.startsWith("reach-in") || kind.equals("display-case");
  }

  /** An evaporator that air goes through, so that it gathers dust. */
  boolean airCoil() {
    return cools() || airConditioning();
  }

  boolean cools() {
    return setpointF.isPresent();
  }
}
