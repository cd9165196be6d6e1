package coldround.field;

import coldround.field.VerdictTable.Urgency;
import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.refrigerant.Refrigerants;
import coldround.scoring.Assessment;
import coldround.scoring.FanMotor;
import coldround.scoring.LimitName;
import coldround.scoring.ScoringRules;
import coldround.upkeep.Task;
import coldround.upkeep.TaskReason;
import coldround.upkeep.Upkeep;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Judges the readings of a visit at once, from the assessment that they have just become part of:
 * what the rules of scoring and upkeep find on its day, and what is as it should be.
 */
public final class Verdicts {

  private static final Comparator<Verdict> GRAVEST_FIRST =
      Comparator.comparing(Verdict::grade)
          .reversed()
          .thenComparing(Verdict::quantity)
          .thenComparing(Verdict::part);
  private static final String FAN = "fan";
  private static final String VOLTAGE = "voltage";

  private final VerdictTable table;
  private final HeadVerdict head;
  private final AsExpected asExpected;
  private final Upkeep upkeep;
  private final ScoringRules rules;

  public Verdicts(VerdictTable table, ScoringRules rules, Refrigerants gases, Upkeep upkeep) {
    this.table = table;
    this.head = new HeadVerdict(rules.limits(), gases);
    this.asExpected = new AsExpected(rules.limits(), upkeep);
    this.upkeep = upkeep;
    this.rules = rules;
  }

  /**
   * @param assessment of the unit on the day of the visit, the visit included
   */
  public Judgement of(Assessment assessment, Visit visit) {
    List<Verdict> verdicts = new ArrayList<>();
    List<LeftOut> leftOut = new ArrayList<>();
    head.judge(assessment, visit, verdicts, leftOut);
    List<Verdict> found = new ArrayList<>();
    reasons(assessment, visit)
        .forEach(
            reason ->
                table
                    .of(reason.code())
                    .filter(urgency -> speaksOf(visit, urgency.quantity()))
                    .ifPresent(urgency -> found.add(verdict(assessment, urgency, reason))));
    found.stream()
        .filter(verdict -> isGravest(verdict, found))
        .filter(verdict -> verdicts.stream().noneMatch(other -> isTwin(verdict, other)))
        .forEach(verdicts::add);
    asExpected.judge(assessment, visit, verdicts, leftOut);
    suspects(visit, leftOut);
    return new Judgement(verdicts.stream().sorted(GRAVEST_FIRST).toList(), leftOut);
  }

  /** What the rules say of that day, but for what is older. */
  private Stream<Reason> reasons(Assessment assessment, Visit visit) {
    Stream<Reason> scoring =
        Stream.of(
                assessment.electrical().findings(),
                assessment.evaporator().findings(),
                assessment.coil().elsewhere())
            .flatMap(List::stream)
            .filter(reason -> visit.date().equals(reason.inputs().get("date")));
    Stream<Reason> tasks =
        upkeep.tasks(assessment, assessment.asOf()).stream()
            .map(Task::reasons)
            .flatMap(List::stream)
            .map(TaskReason::reason)
            .filter(reason -> visit.date().equals(reason.inputs().get("read")));
    return Stream.concat(scoring, tasks);
  }

  /** Another visit of the same day may be the one that a finding is of. */
  private static boolean speaksOf(Visit visit, String quantity) {
    return visit.findings().containsKey(quantity)
        || visit.readings().stream()
            .filter(Reading::usable)
            .map(Reading::quantity)
            .anyMatch(read -> read.equals(quantity) || isOneOf(read, quantity));
  }

  private static boolean isOneOf(String read, String group) {
    return group.equals(FAN) && read.endsWith("_fan")
        || group.equals(VOLTAGE) && read.startsWith("voltage_");
  }

  private static Verdict verdict(Assessment assessment, Urgency urgency, Reason reason) {
    if (urgency.quantity().equals(FAN)) {
      for (FanMotor fan : assessment.electrical().fans()) {
        if (isOf(fan, reason)) {
          return new Verdict(fan.quantity(), fan.part(), urgency.grade(), reason);
        }
      }
    }
    return new Verdict(urgency.quantity(), "", urgency.grade(), reason);
  }

  /** A reason names its fan for people; by current and nameplate it is the same for programs. */
  private static boolean isOf(FanMotor fan, Reason reason) {
    boolean sameAmps =
        reason.inputs().get("amps") instanceof Quantity amps && amps.base() == fan.measuredA();
    String named = String.valueOf(reason.inputs().get("fan")).toLowerCase(java.util.Locale.ROOT);
    return sameAmps
        && named.startsWith(fan.quantity().replace('_', ' '))
        && named.contains(fan.part().toLowerCase(java.util.Locale.ROOT));
  }

  private static boolean isGravest(Verdict verdict, List<Verdict> all) {
    return all.stream()
        .noneMatch(
            other ->
                other.isOf(verdict.quantity(), verdict.part())
                    && other.grade().compareTo(verdict.grade()) > 0);
  }

  /** Scoring and upkeep may find the same; the first to say it is enough. */
  private static boolean isTwin(Verdict verdict, Verdict other) {
    return other.isOf(verdict.quantity(), verdict.part())
        && other.reason().code().equals(verdict.reason().code());
  }

  private void suspects(Visit visit, List<LeftOut> leftOut) {
    for (Reading reading : visit.readings()) {
      if (!reading.suspect().isEmpty()) {
        Reason why =
            new Reason(
                "suspect",
                "{why}",
                Map.of("why", reading.suspect()),
                rules.limits().source(LimitName.READING_SD));
        leftOut.add(new LeftOut(reading.quantity(), reading.part(), why));
      }
    }
  }
}
