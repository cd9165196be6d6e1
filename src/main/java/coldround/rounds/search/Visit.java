package coldround.rounds.search;

/**
 * One stop of a planned round, times in minutes.
 *
 * @param stop index of the stop in the problem
 * @param arrives when the vehicle is there
 * @param begins when the work begins
 * @param leaves when the work is done
 */
public record Visit(int stop, double arrives, double begins, double leaves) {}
