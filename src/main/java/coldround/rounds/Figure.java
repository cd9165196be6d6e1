package coldround.rounds;

/** The rows of scoring/round-costs.csv. */
public enum Figure {
  OVERTIME_MOST("overtime-most"),
  BREAK("break"),
  BREAK_FROM("break-from"),
  BREAK_EARLIEST("break-earliest"),
  BREAK_LATEST("break-latest"),
  BREAK_SHIFT("break-shift"),
  SET_UP("set-up"),
  CALL_MOST("call-most"),
  NEXT_CHANCE("next-chance"),
  RETURN_SHARE("return-share"),
  WORTH_SPAN("worth-span"),
  LATE_BY_LAW("late-by-law"),
  APART("apart"),
  FAR_MOST("far-most"),
  KEEP_WITHIN("keep-within");

  private final String row;

  Figure(String row) {
    this.row = row;
  }

  String row() {
    return row;
  }
}
