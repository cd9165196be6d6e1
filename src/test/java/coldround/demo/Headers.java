package coldround.demo;

import java.util.List;

/** Columns of the standard form that the simulated lists use. */
final class Headers {

  static final List<String> UNITS =
      List.of(
          "customer",
          "site",
          "unit",
          "kind",
          "machine",
          "maker",
          "model",
          "serial",
          "installed",
          "refrigerant",
          "charge [lb]",
          "design_split [deltaF]",
          "high_cutout [psig]",
          "low_cutout [psig]",
          "head_control [psig]",
          "condenser_place",
          "compressor_rated [A]",
          "condenser_fan_rated [A]",
          "evaporator_fan_rated [A]",
          "supply [V]",
          "box_setpoint [degF]",
          "replacement_cost [USD]",
          "retired");

  static final List<String> VISITS =
      List.of(
          "customer",
          "site",
          "unit",
          "visit",
          "date",
          "technician",
          "purpose",
          "ambient [degF]",
          "head_pressure [psig]",
          "suction_pressure [psig]",
          "liquid_line [degF]",
          "suction_line [degF]",
          "box [degF]",
          "evaporator_in [degF]",
          "evaporator_out [degF]",
          "voltage_l1_l2 [V]",
          "voltage_l2_l3 [V]",
          "voltage_l1_l3 [V]",
          "compressor [A]",
          "condenser_fan [A]",
          "evaporator_fan [A]",
          "condenser_coil",
          "evaporator_coil",
          "contactor",
          "door",
          "drain",
          "wiring",
          "refrigerant_added [lb]",
          "work",
          "faults",
          "note");

  static final List<String> READINGS =
      List.of(
          "customer", "site", "unit", "visit", "quantity", "part", "value", "measure", "not_taken");

  static final List<String> FAULTS =
      List.of(
          "customer",
          "site",
          "unit",
          "date",
          "failure_mode",
          "cause",
          "repaired",
          "downtime [h]",
          "stock_lost [USD]",
          "note");

  static final List<String> TRAVEL_TIMES = List.of("from", "to", "minutes", "distance [km]");

  private Headers() {}
}
