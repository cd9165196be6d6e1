package coldround.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * Who drives where and when.
 *
 * @param rounds by day and technician
 * @param leftOut work that is in none of them
 * @param notes what could not be planned as it was, and what else to know
 * @param cost with what waiting of the work left out costs
 * @param currency of all money
 */
public record RoundPlan(
    LocalDate from,
    LocalDate to,
    List<Round> rounds,
    List<Missed> leftOut,
    List<Note> notes,
    Bill cost,
    String currency) {

  public RoundPlan {
    rounds = List.copyOf(rounds);
    leftOut = List.copyOf(leftOut);
    notes = List.copyOf(notes);
  }

  /**
   * One technician's working day of stops.
   *
   * @param home where it starts
   * @param end where it ends
   * @param leaves when the van leaves for the first stop
   * @param returns when it is at the end
   * @param rest null when there is no break
   * @param back the drive to the end
   */
  public record Round(
      String technician,
      String name,
      LocalDate day,
      ZoneId zone,
      Place home,
      Place end,
      Span working,
      Instant leaves,
      Instant returns,
      Span rest,
      List<Stop> stops,
      Leg back,
      double km,
      double drivingMinutes,
      double waitingMinutes,
      Bill cost) {

    public Round {
      stops = List.copyOf(stops);
      // plans stored before a day could end elsewhere
      end = end == null ? home : end;
    }

    /** How feeds and calendars name it within its plan. */
    public String key() {
      return day + "-" + technician;
    }

    public int workMinutes() {
      return stops.stream().mapToInt(stop -> stop.call.minutes()).sum();
    }
  }

  /**
   * One call of a round.
   *
   * @param leg the drive there
   * @param arrives when the van stops there
   * @param begins when the work begins
   * @param leaves when the work is done
   * @param why why now
   */
  public record Stop(
      Call call,
      Premises premises,
      Leg leg,
      Instant arrives,
      Instant begins,
      Instant leaves,
      Why why) {}

  /** A call that is in no round, and why. */
  public record Missed(Call call, Why why) {}

  /** What one technician needs to know of it: the own rounds. */
  public RoundPlan only(String technician) {
    List<Round> own =
        rounds.stream().filter(round -> round.technician().equals(technician)).toList();
    Bill its = own.stream().map(Round::cost).reduce(Bill.NOTHING, Bill::plus);
    return new RoundPlan(from, to, own, List.of(), List.of(), its, currency);
  }

  public double km() {
    return rounds.stream().mapToDouble(Round::km).sum();
  }

  public double drivingMinutes() {
    return rounds.stream().mapToDouble(Round::drivingMinutes).sum();
  }
}
