package coldround.rounds;

import coldround.rounds.search.CostSplit;

/**
 * What a round or a plan costs, in the currency of the prices.
 *
 * @param labour of the regular and the extra minutes
 * @param overtime on top of that
 * @param driving by the kilometre
 * @param deferring of work that is done later than at once, or not in this plan
 */
public record Bill(double labour, double overtime, double driving, double deferring) {

  static final Bill NOTHING = new Bill(0, 0, 0, 0);

  static Bill of(CostSplit cost) {
    return new Bill(
        cost.labour(), cost.overtime(), cost.distance(), cost.assignment() + cost.leftOut());
  }

  public double total() {
    return labour + overtime + driving + deferring;
  }

  Bill plus(Bill other) {
    return new Bill(
        labour + other.labour,
        overtime + other.overtime,
        driving + other.driving,
        deferring + other.deferring);
  }

  Bill minus(Bill other) {
    return new Bill(
        labour - other.labour,
        overtime - other.overtime,
        driving - other.driving,
        deferring - other.deferring);
  }
}
