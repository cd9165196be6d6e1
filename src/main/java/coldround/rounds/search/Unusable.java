package coldround.rounds.search;

/**
 * A vehicle that the plan could not use.
 *
 * @param vehicle index of the vehicle in the problem
 * @param fault why
 */
public record Unusable(int vehicle, Fault fault) {}
