package coldround.rounds.search.engine;

import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import java.util.ArrayList;
import java.util.List;

/**
 * Brings the stops of one place on one day into one round, where that costs little more, and says
 * of the others why not. A last pass over a plan: the search itself weighs each round alone.
 */
public final class Together {

  /** Why several vehicles serve one place on one day. */
  public enum Cause {
    /** Stops are bound to different vehicles, or to one that may not serve the others. */
    BOUND,
    /** No vehicle of the day has the skills for all. */
    SKILLS,
    /** None of those that could has room. */
    ROOM,
    /** It would cost more than it is worth. */
    PRICE,
    /** It would pay: the plan was changed as little as possible instead. */
    LEFT_SO
  }

  /**
   * Several vehicles at one place on one day.
   *
   * @param stops there
   * @param vehicles of them, by index
   * @param extra what one vehicle for all would cost more; infinite where it cannot be
   * @param otherDay what it would cost more to do the part of one vehicle on another day, where
   *     nobody else is then; infinite where it cannot be
   */
  public record Apart(
      List<Integer> stops, List<Integer> vehicles, Cause cause, double extra, double otherDay) {

    public Apart {
      stops = List.copyOf(stops);
      vehicles = List.copyOf(vehicles);
    }
  }

  private final List<?> days;
  private final double price;
  private final Desk desk;

  /**
   * @param days of the vehicles, by index
   * @param price what a second vehicle at the same place on the same day costs
   */
  public Together(Problem problem, List<?> days, double price) {
    this.days = List.copyOf(days);
    this.price = price;
    desk = new Desk(problem);
  }

  /** The plan with as few vehicles a place and day as pays. */
  public Plan of(Plan plan) {
    Meetings meetings = meetings(plan);
    boolean changed = false;
    boolean again = true;
    while (again) {
      again = false;
      for (Meetings.Meeting meeting : meetings.several()) {
        again |= gather(meetings, meeting);
      }
      changed |= again;
    }
    return changed ? desk.plan(meetings.solution) : plan;
  }

  /** Where several vehicles serve one place on one day, and why. */
  public List<Apart> apart(Plan plan) {
    Meetings meetings = meetings(plan);
    List<Apart> apart = new ArrayList<>();
    for (Meetings.Meeting meeting : meetings.several()) {
      double now = meetings.solution.cost;
      double extra = meetings.inOne(meeting).cost() - now;
      double otherDay = meetings.onAnotherDay(meeting, Double.POSITIVE_INFINITY).cost() - now;
      Cause cause = cause(meetings, meeting, extra);
      apart.add(new Apart(meeting.stops(), meeting.vehicles(), cause, extra, otherDay));
    }
    return apart;
  }

  private Meetings meetings(Plan plan) {
    return new Meetings(desk.solution(plan), days);
  }

  private Cause cause(Meetings meetings, Meetings.Meeting meeting, double extra) {
    if (meetings.bound(meeting)) {
      return Cause.BOUND;
    }
    if (!meetings.skilled(meeting)) {
      return Cause.SKILLS;
    }
    if (extra == Double.POSITIVE_INFINITY) {
      return Cause.ROOM;
    }
    return extra < worth(meeting) ? Cause.LEFT_SO : Cause.PRICE;
  }

  private double worth(Meetings.Meeting meeting) {
    return price * (meeting.vehicles().size() - 1);
  }

  /** Each change leaves one vehicle less there, so this ends. */
  private boolean gather(Meetings meetings, Meetings.Meeting first) {
    boolean changed = false;
    Meetings.Meeting meeting = meetings.again(first);
    while (meeting.vehicles().size() > 1) {
      double now = meetings.solution.cost;
      Meetings.Move one = meetings.inOne(meeting);
      Meetings.Move part = meetings.onAnotherDay(meeting, price);
      double gainOfOne = worth(meeting) + now - one.cost();
      double gainOfPart = price + now - part.cost();
      if (Math.max(gainOfOne, gainOfPart) <= Model.EPS) {
        return changed;
      }
      meetings.make(gainOfOne >= gainOfPart ? one : part);
      changed = true;
      meeting = meetings.again(meeting);
    }
    return changed;
  }
}
