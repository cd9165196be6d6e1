package coldround.rounds.search.engine;

import coldround.rounds.search.Rest;
import java.util.Arrays;

/**
 * The times of a tour. For each index it knows the earliest departure and the latest arrival that
 * keeps the rest of the tour possible; both once for "break taken" and once for "break still to
 * take". Waiting is always allowed, so an earlier arrival is never worse and the two numbers decide
 * an insertion in constant time.
 */
final class TourClock {

  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** Stands for a shift without end; below infinity, so that "never" does not fit in. */
  private static final double NO_END = 1e15;

  private final Tour tour;
  private final Model model;
  private final double begins;
  private final double regularEnd;
  private final double hardEnd;
  private final double perMinute;
  private final double perOvertime;
  private final boolean hasRest;
  private final double restMinutes;
  private final double restFrom;
  private final double restTo;

  private double[] leave;
  private double[] arrive;
  private double[] leaveUnrested;
  private double[] arriveUnrested;

  /** Of the tour last given to {@link #time}. */
  double departs;

  double returns;
  boolean skipsRest;

  TourClock(Tour tour) {
    this.tour = tour;
    this.model = tour.model;
    int v = tour.vehicle;
    begins = model.fleet.shift[v].begins();
    regularEnd = model.fleet.shift[v].regularEnd();
    hardEnd = Math.min(NO_END, model.fleet.shift[v].hardEnd());
    perMinute = model.fleet.rates[v].perMinute();
    perOvertime = model.fleet.rates[v].perOvertimeMinute();
    Rest rest = model.fleet.rest[v];
    hasRest = rest.due();
    restMinutes = rest.minutes();
    restFrom = rest.earliest();
    restTo = rest.latest();
    leave = new double[tour.node.length];
    arrive = new double[tour.node.length];
    leaveUnrested = new double[hasRest ? tour.node.length : 0];
    arriveUnrested = new double[hasRest ? tour.node.length : 0];
  }

  void grow(int length) {
    leave = Arrays.copyOf(leave, length);
    arrive = Arrays.copyOf(arrive, length);
    leaveUnrested = Arrays.copyOf(leaveUnrested, hasRest ? length : 0);
    arriveUnrested = Arrays.copyOf(arriveUnrested, hasRest ? length : 0);
  }

  void copy(TourClock other) {
    int length = tour.size + 2;
    System.arraycopy(other.leave, 0, leave, 0, length);
    System.arraycopy(other.arrive, 0, arrive, 0, length);
    if (hasRest) {
      System.arraycopy(other.leaveUnrested, 0, leaveUnrested, 0, length);
      System.arraycopy(other.arriveUnrested, 0, arriveUnrested, 0, length);
    }
  }

  void refresh() {
    if (hasRest) {
      forwardWithRest();
      backwardWithRest();
    } else {
      forward();
      backward();
    }
  }

  private void forward() {
    double[] leg = tour.leg;
    double time = begins;
    leave[0] = time;
    for (int k = 1; k <= tour.size; k++) {
      int s = tour.node[k];
      time = model.open(s, time + leg[k - 1]) + model.service[s];
      leave[k] = time;
    }
  }

  private void backward() {
    int end = tour.size + 1;
    double time = hardEnd;
    arrive[end] = time;
    for (int k = tour.size; k >= 1; k--) {
      int s = tour.node[k];
      time = model.lastBegin(s, time - tour.leg[k] - model.service[s]);
      arrive[k] = time;
    }
  }

  private void forwardWithRest() {
    leave[0] = NEVER;
    leaveUnrested[0] = begins;
    for (int k = 1; k <= tour.size; k++) {
      int s = tour.node[k];
      double way = tour.leg[k - 1];
      leave[k] = beginRested(s, leave[k - 1] + way, leaveUnrested[k - 1] + way) + model.service[s];
      leaveUnrested[k] = model.open(s, leaveUnrested[k - 1] + way) + model.service[s];
    }
  }

  private void backwardWithRest() {
    int end = tour.size + 1;
    arrive[end] = hardEnd;
    arriveUnrested[end] = Math.min(hardEnd, restTo);
    for (int k = tour.size; k >= 1; k--) {
      int s = tour.node[k];
      double work = tour.leg[k] + model.service[s];
      arrive[k] = model.lastBegin(s, arrive[k + 1] - work);
      arriveUnrested[k] =
          Math.max(model.lastBegin(s, arriveUnrested[k + 1] - work), beforeRest(arrive[k]));
    }
  }

  /** Earliest begin at s with the break taken by then. */
  private double beginRested(int s, double arrival, double arrivalUnrested) {
    return Math.min(model.open(s, arrival), model.open(s, afterRest(arrivalUnrested)));
  }

  /** When a break that starts on arriving is over. */
  double afterRest(double arrival) {
    return arrival > restTo + Model.EPS ? NEVER : Math.max(arrival, restFrom) + restMinutes;
  }

  /** Latest arrival from which a break is over by the given time. */
  private double beforeRest(double over) {
    return restFrom + restMinutes > over + Model.EPS
        ? -NEVER
        : Math.min(restTo, over - restMinutes);
  }

  boolean holds() {
    int end = tour.size;
    boolean rested = leave[end] + tour.leg[end] <= hardEnd + Model.EPS;
    return rested
        || hasRest && leaveUnrested[end] + tour.leg[end] <= arriveUnrested[end + 1] + Model.EPS;
  }

  /** True if no index from k on can take stop c because its last window has closed by then. */
  boolean tooLate(int c, int k) {
    double earliest = hasRest ? leaveUnrested[k] : leave[k];
    return Math.min(earliest, leave[k]) > model.lastClosing(c) + Model.EPS;
  }

  /** Whether stop c fits in after index k. */
  boolean fits(int c, int k) {
    int row = c * model.nodes;
    double there = model.minsBack[row + tour.node[k]];
    double work = model.service[c] + model.mins[row + tour.node[k + 1]] - Model.EPS;
    double begin = model.open(c, leave[k] + there);
    if (begin + work <= arrive[k + 1]) {
      return true;
    }
    return hasRest && fitsUnrested(c, k, there, work);
  }

  private boolean fitsUnrested(int c, int k, double there, double work) {
    double arrival = leaveUnrested[k] + there;
    return model.open(c, afterRest(arrival)) + work <= arrive[k + 1]
        || model.open(c, arrival) + work <= arriveUnrested[k + 1];
  }

  /** Node at an index of the tour with stop c put in after index k; c = -1 for the tour itself. */
  private int nodeAt(int index, int c, int k) {
    if (c < 0 || index <= k) {
      return tour.node[index];
    }
    return index == k + 1 ? c : tour.node[index - 1];
  }

  private double legTo(int index, int c, int k) {
    return model.mins[nodeAt(index - 1, c, k) * model.nodes + nodeAt(index, c, k)];
  }

  /**
   * Labour and overtime of the tour with stop c put in after index k, which must fit: the earliest
   * return, and the latest departure that still reaches it. Stop -1 stands for the tour as it is.
   */
  double cost(int c, int k) {
    time(c, k);
    return labour() + overtime();
  }

  /** Labour of the tour last given to {@link #time}. */
  double labour() {
    return perMinute * (returns - departs - (hasRest && !skipsRest ? restMinutes : 0));
  }

  double overtime() {
    return perOvertime > 0 ? perOvertime * Math.max(0, returns - regularEnd) : 0;
  }

  /** Finds return and departure of the tour with stop c put in after index k. */
  void time(int c, int k) {
    int end = tour.size + (c < 0 ? 1 : 2);
    double rested = leave[k];
    double unrested = hasRest ? leaveUnrested[k] : NEVER;
    for (int i = k + 1; i < end; i++) {
      int s = nodeAt(i, c, k);
      double way = legTo(i, c, k);
      double begin =
          hasRest ? beginRested(s, rested + way, unrested + way) : model.open(s, rested + way);
      rested = begin + model.service[s];
      unrested = hasRest ? model.open(s, unrested + way) + model.service[s] : NEVER;
    }
    double home = legTo(end, c, k);
    skipsRest = hasRest && unrested + home <= restTo + Model.EPS;
    returns = (skipsRest ? unrested : rested) + home;
    departs = latestDeparture(c, k, end);
  }

  private double latestDeparture(int c, int k, int end) {
    double rested = skipsRest ? -NEVER : returns;
    double unrested = skipsRest ? returns : -NEVER;
    for (int i = end - 1; i >= 1; i--) {
      int s = nodeAt(i, c, k);
      double work = legTo(i + 1, c, k) + model.service[s];
      double restedNext = model.lastBegin(s, rested - work);
      if (hasRest) {
        unrested = Math.max(model.lastBegin(s, unrested - work), beforeRest(restedNext));
      }
      rested = restedNext;
    }
    return Math.max(begins, (hasRest ? unrested : rested) - legTo(1, c, k));
  }
}
