package coldround.upkeep;

import java.util.List;

/** Codes of the tasks that a rule of its own asks for. */
final class TaskCode {

  static final String CONDENSER = "condenser-coil-cleaning";
  static final String EVAPORATOR = "evaporator-coil-cleaning";
  static final String ELECTRICAL = "electrical-inspection";
  static final String FAN = "fan-motor-inspection";
  static final String LEAK = "leak-inspection";
  static final String PRESSURE = "pressure-control-check";
  static final String THERMOSTAT = "thermostat-check";
  static final String FOLLOW_UP = "follow-up-inspection";
  static final String SURVEY = "survey";
  static final List<String> ALL =
      List.of(
          CONDENSER, EVAPORATOR, ELECTRICAL, FAN, LEAK, PRESSURE, THERMOSTAT, FOLLOW_UP, SURVEY);

  private TaskCode() {}
}
