package coldround.upkeep;

import coldround.quantity.Dimension;

/** The rows that scoring/upkeep-limits.csv must have, with what each measures. */
enum UpkeepLimit {
  UNRECORDED_DUE("unrecorded-due", Dimension.TIME),
  FOLLOW_UP_AFTER("follow-up-after", Dimension.TIME),
  SURVEY_GAP("survey-gap", Dimension.TIME),
  SURVEY_AFTER("survey-after", Dimension.TIME),
  SURVEY_AGAIN("survey-again", Dimension.TIME),
  COMPLETENESS_LEAST("completeness-least", Dimension.COUNT),
  IMBALANCE_LOOK("imbalance-look", Dimension.SHARE),
  IMBALANCE_LOOK_AFTER("imbalance-look-after", Dimension.TIME),
  IMBALANCE_STOP_AFTER("imbalance-stop-after", Dimension.TIME),
  FAN_LOOK_AFTER("fan-look-after", Dimension.TIME),
  FAN_REPLACE_BELOW("fan-replace-below", Dimension.SHARE),
  FAN_REPLACE_ABOVE("fan-replace-above", Dimension.SHARE),
  FAN_REPLACE_AFTER("fan-replace-after", Dimension.TIME),
  COMPRESSOR_LOOK_AFTER("compressor-look-after", Dimension.TIME),
  BOX_OFF_SETPOINT("box-off-setpoint", Dimension.TEMPERATURE_DIFFERENCE),
  BOX_OFF_AFTER("box-off-after", Dimension.TIME),
  FOOD_LIMIT_AFTER("food-limit-after", Dimension.TIME),
  FROZEN_LIMIT_AFTER("frozen-limit-after", Dimension.TIME),
  CUT_OUT_OFF_AFTER("cut-out-off-after", Dimension.TIME),
  LEAK_RATE_AFTER("leak-rate-after", Dimension.TIME),
  OPEN_LEAK_AFTER("open-leak-after", Dimension.TIME),
  ECONOMIC_HORIZON("economic-horizon", Dimension.TIME),
  WORTH_HORIZON("worth-horizon", Dimension.TIME),
  MODE_WEIGHT("mode-weight", Dimension.COUNT),
  POWER_FACTOR("power-factor", Dimension.COUNT),
  RATED_SHARE("rated-share", Dimension.COUNT),
  THREE_PHASE_FROM("three-phase-from", Dimension.VOLTAGE),
  USUAL_BELOW_DESIGN("usual-below-design", Dimension.TEMPERATURE_DIFFERENCE),
  USUAL_AMBIENT("usual-ambient", Dimension.TEMPERATURE),
  DIRT_RISE("dirt-rise", Dimension.TEMPERATURE_DIFFERENCE),
  TECHNICIAN_WEEK("technician-week", Dimension.TIME),
  TRIP_SHARE("trip-share", Dimension.COUNT),
  SEASON_LEAD("season-lead", Dimension.TIME),
  SEASON_BAND("season-band", Dimension.TEMPERATURE_DIFFERENCE),
  NEEDLESS_BELOW("needless-below", Dimension.TEMPERATURE_DIFFERENCE);

  private final String row;
  private final Dimension dimension;

  UpkeepLimit(String row, Dimension dimension) {
    this.row = row;
    this.dimension = dimension;
  }

  String row() {
    return row;
  }

  Dimension dimension() {
    return dimension;
  }
}
