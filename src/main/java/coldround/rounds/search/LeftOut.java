package coldround.rounds.search;

/**
 * A stop that is not in the plan.
 *
 * @param stop index of the stop in the problem
 * @param mandatory whether it should have been served at any price
 * @param fault why it is not in the plan
 */
public record LeftOut(int stop, boolean mandatory, Fault fault) {}
