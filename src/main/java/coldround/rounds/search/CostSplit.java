package coldround.rounds.search;

/**
 * The cost of a round or of a plan by kind.
 *
 * @param fixed for going out
 * @param distance for the distance driven
 * @param labour for the minutes of the round
 * @param overtime on top of labour for the minutes after the regular end
 * @param assignment for stops given to this vehicle rather than the one wished for
 * @param leftOut for stops left out that have a price
 */
public record CostSplit(
    double fixed,
    double distance,
    double labour,
    double overtime,
    double assignment,
    double leftOut) {

  /** Nothing. */
  public static final CostSplit ZERO = new CostSplit(0, 0, 0, 0, 0, 0);

  public double total() {
    return fixed + distance + labour + overtime + assignment + leftOut;
  }

  public CostSplit plus(CostSplit other) {
    return new CostSplit(
        fixed + other.fixed,
        distance + other.distance,
        labour + other.labour,
        overtime + other.overtime,
        assignment + other.assignment,
        leftOut + other.leftOut);
  }
}
