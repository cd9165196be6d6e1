package coldround.scoring;

import java.util.Locale;

/** What a split read on the roof says by itself, without the unit's history. */
public enum RoofVerdict {
  /** No condenser that runs free has such a split. */
  IMPOSSIBLE,
  /** The air is too cool for a split to tell anything. */
  TOO_COOL,
  /** Well under the expected split. */
  LOW,
  AS_EXPECTED,
  /** Over it by as much as is watched. */
  WATCH,
  /** Over it by as much as asks for a cleaning. */
  HIGH,
  /** Over it by as much as a coil can lose. */
  FAR;

  /** As tables and answers write it: "as-expected". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
