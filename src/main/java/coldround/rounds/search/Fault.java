package coldround.rounds.search;

/** Why a stop is not in the plan, or a vehicle not used by it. */
public enum Fault {
  NO_VEHICLE("there is no vehicle"),
  SHIFT_WITHOUT_LENGTH("the shift ends before it begins"),
  SERVICE_NOT_A_TIME("the service time is not a number of minutes of 0 or more"),
  WINDOW_NEVER_OPEN("no window has its end after its start"),
  PRICE_OR_PIN_EXCLUDES_ALL("no vehicle is allowed to serve it"),
  SKILL_MISSING("no allowed vehicle has the skills"),
  DEMAND_TOO_LARGE("the demand exceeds the capacity of every allowed vehicle"),
  NOT_REACHABLE("the matrices have no finite way there and back for any allowed vehicle"),
  LONGER_THAN_ANY_SHIFT("driving and service take longer than any allowed shift"),
  WINDOW_OUTSIDE_SHIFTS("no window can be met within the shift of an allowed vehicle"),
  NO_ROOM("the rounds have no room for it"),
  DEARER_THAN_LEAVING_OUT("serving it costs more than leaving it out");

  private final String text;

  Fault(String text) {
    this.text = text;
  }

  /** The fault as the end of a sentence about a stop or a vehicle. */
  public String text() {
    return text;
  }
}
