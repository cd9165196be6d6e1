package coldround.upkeep;

import coldround.fleet.Unit;
import coldround.reason.Inputs;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.Assessment;
import coldround.scoring.CoilState;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** One unit as the rules look at it: its assessment, what was done on it when, and the tables. */
final class UnitCase {

  private final Assessment assessment;
  private final UpkeepTables tables;
  private final WorkRecord record;
  private final PricesAt prices;
  private RunningDirty dirty;

  UnitCase(Assessment assessment, UpkeepTables tables) {
    this.assessment = assessment;
    this.tables = tables;
    this.record = new WorkRecord(assessment.history());
    this.prices = tables.costs().at(jurisdiction());
  }

  Assessment assessment() {
    return assessment;
  }

  UpkeepTables tables() {
    return tables;
  }

  /** Those that hold at the site. */
  PricesAt prices() {
    return prices;
  }

  WorkRecord record() {
    return record;
  }

  /** Worked out once, as several rules ask for it. */
  RunningDirty dirty() {
    if (dirty == null) {
      dirty = RunningDirty.of(this);
    }
    return dirty;
  }

  Unit unit() {
    return assessment.history().unit();
  }

  CoilState coil() {
    return assessment.coil();
  }

  LocalDate today() {
    return assessment.asOf();
  }

  String surroundings() {
    return assessment.history().site().surroundings();
  }

  String jurisdiction() {
    return assessment.history().site().jurisdiction();
  }

  boolean has(TaskKind task) {
    return task.kinds().contains(unit().kind());
  }

  /** The latest day on which the task was done; null for never. */
  LocalDate done(String task) {
    return record.done(tables.catalogue().get(task));
  }

  /**
   * The day from which an interval of the task is counted: the last time it was done, else the
   * later of installation and first visit; null when neither is on record.
   */
  LocalDate countedFrom(String task) {
    return countedFrom(done(task));
  }

  /**
   * @param done day of the last time; null for never
   */
  LocalDate countedFrom(LocalDate done) {
    return done != null ? done : WorkRecord.later(record.firstVisit(), unit().installed());
  }

  /** The day on which work falls due that nothing on record says anything of. */
  LocalDate soon() {
    return tables.limits().after(today(), UpkeepLimit.UNRECORDED_DUE);
  }

  /** Whole days from one day to another. */
  static long days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }

  /**
   * A reason from its facts.
   *
   * @param namesAndFacts names and facts by turns
   */
  static Reason reason(String code, String template, Source source, Object... namesAndFacts) {
    return new Reason(code, template, Inputs.of(namesAndFacts), source);
  }
}
