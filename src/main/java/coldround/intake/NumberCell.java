package coldround.intake;

/** A plain number within limits, both included. */
record NumberCell(double least, double greatest, char decimalSign, String example)
    implements CellReader {

  static NumberCell of(Column column, CellRules rules) {
    return new NumberCell(
        Limits.of(column.least(), Double.NEGATIVE_INFINITY),
        Limits.of(column.greatest(), Double.POSITIVE_INFINITY),
        rules.profile().decimalSign(),
        column.example());
  }

  @Override
  public Object read(String text, Refusals refusals) {
    double value = Numbers.parse(text, decimalSign);
    if (Double.isNaN(value)) {
      refusals.add(ProblemCode.NOT_A_NUMBER, Numbers.refusal(text, decimalSign, example));
      return null;
    }
    if (value < least || value > greatest) {
      refusals.add(ProblemCode.OUT_OF_RANGE, Limits.refusal(text, least, greatest, ""));
      return null;
    }
    return value;
  }
}
