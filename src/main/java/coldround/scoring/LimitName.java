package coldround.scoring;

import coldround.quantity.Dimension;

/** The rows that scoring/limits.csv must have, with what each measures. */
public enum LimitName {
  AMBIENT_LEAST("ambient-least", Dimension.TEMPERATURE),
  HEAD_CONTROL_BAND("head-control-band", Dimension.TEMPERATURE_DIFFERENCE),
  SPLIT_LEAST("split-least", Dimension.TEMPERATURE_DIFFERENCE),
  READING_SD("reading-sd", Dimension.TEMPERATURE_DIFFERENCE),
  DESIGN_SPLIT_SD("design-split-sd", Dimension.TEMPERATURE_DIFFERENCE),
  KIND_SPLIT_SD("kind-split-sd", Dimension.TEMPERATURE_DIFFERENCE),
  CLEAN_WINDOW("clean-window", Dimension.TIME),
  CLEAN_OVER_DESIGN("clean-over-design", Dimension.TEMPERATURE_DIFFERENCE),
  CLEAN_OVER_KIND("clean-over-kind", Dimension.TEMPERATURE_DIFFERENCE),
  EXCESS_WATCH("excess-watch", Dimension.TEMPERATURE_DIFFERENCE),
  EXCESS_LIMIT("excess-limit", Dimension.TEMPERATURE_DIFFERENCE),
  SPLIT_SHORT("split-short", Dimension.TEMPERATURE_DIFFERENCE),
  EXCESS_FULL("excess-full", Dimension.TEMPERATURE_DIFFERENCE),
  UNRECORDED_CLEANING("unrecorded-cleaning", Dimension.TIME),
  EVAPORATOR_SHARE("evaporator-share", Dimension.COUNT),
  GRADE_SD("grade-sd", Dimension.COUNT),
  EVIDENCE_VALID("evidence-valid", Dimension.TIME),
  TRIP_MARGIN_LEAST("trip-margin-least", Dimension.TEMPERATURE_DIFFERENCE),
  SUBCOOLING_HIGH("subcooling-high", Dimension.TEMPERATURE_DIFFERENCE),
  SUPERHEAT_FLOOD("superheat-flood", Dimension.TEMPERATURE_DIFFERENCE),
  AIR_DROP_LEAST("air-drop-least", Dimension.TEMPERATURE_DIFFERENCE),
  AIR_DROP_MOST("air-drop-most", Dimension.TEMPERATURE_DIFFERENCE),
  FAN_LOAD_LEAST("fan-load-least", Dimension.SHARE),
  FAN_LOAD_MOST("fan-load-most", Dimension.SHARE),
  IMBALANCE_DERATE("imbalance-derate", Dimension.SHARE),
  IMBALANCE_MOST("imbalance-most", Dimension.SHARE),
  SUPPLY_BAND("supply-band", Dimension.SHARE),
  COMPRESSOR_CHANGE("compressor-change", Dimension.SHARE),
  LIKE_PRESSURE("like-pressure", Dimension.SHARE),
  COMPRESSOR_LEAST_READINGS("compressor-least-readings", Dimension.COUNT),
  REPEAT_WINDOW("repeat-window", Dimension.TIME),
  DID_NOT_HOLD("did-not-hold", Dimension.TIME),
  SAME_FAULT("same-fault", Dimension.TIME),
  REPEAT_MEMORY("repeat-memory", Dimension.TIME),
  TREND_LEAST_EVENTS("trend-least-events", Dimension.COUNT),
  TREND_SIGNIFICANCE("trend-significance", Dimension.COUNT),
  TREND_MOST("trend-most", Dimension.COUNT),
  RECORD_FULL("record-full", Dimension.TIME),
  PRIOR_LEAST_UNITS("prior-least-units", Dimension.COUNT),
  PRIOR_LEAST_YEARS("prior-least-years", Dimension.TIME),
  PRIOR_MOST_YEARS("prior-most-years", Dimension.TIME),
  SUPPLY_UNKNOWN("supply-unknown", Dimension.COUNT);

  private final String row;
  private final Dimension dimension;

  LimitName(String row, Dimension dimension) {
    this.row = row;
    this.dimension = dimension;
  }

  /** Key of the row in limits.csv. */
  public String row() {
    return row;
  }

  public Dimension dimension() {
    return dimension;
  }
}
