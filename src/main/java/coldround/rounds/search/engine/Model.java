package coldround.rounds.search.engine;

import coldround.rounds.search.Problem;
import java.util.Arrays;

/**
 * A problem as flat arrays. Nodes are the stops by their index, then the places where vehicles
 * start or end. Workers share it and do not change it.
 */
final class Model {

  /** Slack of all comparisons of times and loads, against rounding. */
  static final double EPS = 1e-9;

  /** Stands for a way that does not exist; finite so that differences stay numbers. */
  static final double NO_WAY = 1e12;

  static final double NEVER = Double.POSITIVE_INFINITY;

  final Problem problem;
  final int stops;
  final int vehicles;
  final int nodes;

  /** Distance by from * nodes + to, and the same by to * nodes + from. */
  final double[] dist;

  final double[] distBack;
  final double[] mins;
  final double[] minsBack;

  final double[] service;
  final double[] demand;
  final double[] price;
  final boolean[] mandatory;

  /** Windows of stop s are those from windowFrom[s] up to windowFrom[s + 1], in order of time. */
  final int[] windowFrom;

  final double[] opens;
  final double[] closes;

  /** Stops that a vehicle can serve at all; the others stay out of the search. */
  final boolean[] servable;

  final int[] active;
  final Fleet fleet;

  /** False if no time can bind or cost anything. */
  final boolean timed;

  final boolean anyOptional;
  private int[][] near;

  Model(Problem problem, Feasibility feasibility) {
    this.problem = problem;
    this.stops = problem.stops().size();
    this.vehicles = problem.vehicles().size();
    this.fleet = new Fleet(problem, feasibility);
    ModelArrays arrays = new ModelArrays(problem, fleet);
    this.nodes = arrays.nodes;
    this.dist = arrays.flat(problem.distance());
    this.mins = problem.minutes() == problem.distance() ? dist : arrays.flat(problem.minutes());
    this.distBack = arrays.transposed(dist);
    this.minsBack = mins == dist ? distBack : arrays.transposed(mins);
    this.service = arrays.service;
    this.demand = arrays.demand;
    this.price = arrays.price;
    this.mandatory = arrays.mandatory;
    this.windowFrom = arrays.windowFrom;
    this.opens = arrays.opens;
    this.closes = arrays.closes;
    this.servable = feasibility.servable();
    this.active = feasibility.servableStops();
    this.timed = arrays.windowsBind || fleet.timed;
    this.anyOptional = Arrays.stream(active).anyMatch(s -> !mandatory[s]);
  }

  /** Near stops of each stop, nearest first; made at the first call, before the workers start. */
  int[][] near() {
    if (near == null) {
      near = Neighbours.of(this);
    }
    return near;
  }

  /** First minute from {@code time} on at which stop s may begin. */
  double open(int s, double time) {
    int last = windowFrom[s + 1];
    for (int w = windowFrom[s]; w < last; w++) {
      if (time <= closes[w] + EPS) {
        return Math.max(time, opens[w]);
      }
    }
    return NEVER;
  }

  /** Last minute up to {@code time} at which stop s may begin; minus infinity if none. */
  double lastBegin(int s, double time) {
    for (int w = windowFrom[s + 1] - 1; w >= windowFrom[s]; w--) {
      if (time >= opens[w] - EPS) {
        return Math.min(time, closes[w]);
      }
    }
    return -NEVER;
  }

  double firstOpening(int s) {
    return opens[windowFrom[s]];
  }

  double lastClosing(int s) {
    return closes[windowFrom[s + 1] - 1];
  }
}
