package coldround.field.edge;

import coldround.access.Audit;
import coldround.field.FieldProblem;
import coldround.field.FieldVisit;
import coldround.field.Judgement;
import coldround.field.Verdicts;
import coldround.field.VisitForm;
import coldround.fleet.Correction;
import coldround.fleet.Entry;
import coldround.fleet.Fleet;
import coldround.fleet.FleetListener;
import coldround.fleet.FleetWriting;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.Plausibility;
import coldround.fleet.Today;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import coldround.scoring.Scoring;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** Takes one visit from the field into the store and judges its readings. */
@ApplicationScoped
class VisitRecording {

  /** A visit as it now stands, and what became of it. */
  record Recorded(String unit, Visit visit, Outcome outcome, Judgement judgement) {}

  private final Fleet fleet;
  private final FleetWriting writing;
  private final Instance<FleetListener> listeners;
  private final IntakeTables tables;
  private final Scoring scoring;
  private final Verdicts verdicts;
  private final Today today;
  private final UnitLock units;
  private final Plausibility plausibility;
  private final OwnVisits ownVisits;
  private final Audit audit;

  @Inject
  VisitRecording(
      Fleet fleet,
      FleetWriting writing,
      @Any Instance<FleetListener> listeners,
      IntakeTables tables,
      Scoring scoring,
      Verdicts verdicts,
      Today today,
      UnitLock units,
      Plausibility plausibility,
      OwnVisits ownVisits,
      Audit audit) {
    this.fleet = fleet;
    this.writing = writing;
    this.listeners = listeners;
    this.tables = tables;
    this.scoring = scoring;
    this.verdicts = verdicts;
    this.today = today;
    this.units = units;
    this.plausibility = plausibility;
    this.ownVisits = ownVisits;
    this.audit = audit;
  }

  /**
   * Stores the visit and tells those who listen to the fleet, in the transaction of the caller.
   *
   * @param visit with a number
   * @param understood told what the visit says, before anybody else is
   * @throws Problem 404 for an unknown unit, 422 with all that is wrong with the visit
   */
  @Transactional(Transactional.TxType.MANDATORY)
  Recorded record(String unitId, FieldVisit visit, Consumer<Entry> understood) {
    return record(unitId, visit, Set.of(), understood);
  }

  /**
   * The same.
   *
   * @param emptied columns whose stored value goes
   */
  @Transactional(Transactional.TxType.MANDATORY)
  Recorded record(
      String unitId, FieldVisit visit, Set<String> emptied, Consumer<Entry> understood) {
    units.lock(unitId);
    UnitHistory known = history(unitId);
    Entry entry = entry(known, visit, emptied);
    String number = entry.key("visit");
    String before = find(known, number).map(Visit::brief).orElse("");
    understood.accept(entry);
    Written written = writing.write(Kind.VISITS, List.of(entry), Correction.FIELD);
    if (!written.units().isEmpty()) {
      listeners.forEach(listener -> listener.changed(List.of(unitId)));
    }
    UnitHistory now = history(unitId);
    Visit stored = find(now, number).orElseThrow();
    note(known.unit(), written.outcomes().get(0), before, stored);
    return new Recorded(unitId, stored, written.outcomes().get(0), judge(now, stored));
  }

  private void note(Unit unit, Outcome outcome, String before, Visit stored) {
    if (outcome == Outcome.CREATED || outcome == Outcome.CHANGED) {
      String action = outcome == Outcome.CREATED ? "made" : "changed";
      String id = unit.id() + "/" + stored.number();
      String now = stored.brief();
      audit.note(new Audit.Change("visit", id, action, unit.customer(), before, now));
    }
  }

  /** Until the end of the transaction nobody else changes the unit. */
  void lock(String unitId) {
    units.lock(unitId);
  }

  private Entry entry(UnitHistory history, FieldVisit sent, Set<String> emptied) {
    FieldVisit visit = ownVisits.own(sent, find(history, sent.number().strip()));
    VisitForm.Filled filled = VisitForm.fill(tables, today.usually(), history.unit(), visit);
    if (filled.entry() == null) {
      throw refusal(filled.problems());
    }
    Map<String, Object> said = new LinkedHashMap<>(filled.entry().said());
    emptied.forEach(column -> said.putIfAbsent(column, Entry.ERASED));
    return new Entry(0, said);
  }

  /**
   * What would be said of the readings; nothing is stored.
   *
   * @throws Problem as for a visit that is to be stored
   */
  Judgement tried(String unitId, FieldVisit visit, Set<String> emptied) {
    UnitHistory history = history(unitId);
    Entry entry = entry(history, visit, emptied);
    Visit stored = find(history, entry.key("visit")).orElse(null);
    Visit merged =
        plausibility.checked(
            Merging.visit(stored, entry), history.unit(), history.site().atmosphereKpa());
    List<Visit> visits = new ArrayList<>(history.visits());
    visits.remove(stored);
    visits.add(merged);
    UnitHistory with =
        new UnitHistory(history.site(), history.unit(), visits, history.reportedFaults());
    return judge(with, merged);
  }

  /** A visit that is stored, judged as of its day. */
  Optional<Recorded> stored(String unitId, String number) {
    UnitHistory history = history(unitId);
    return find(history, number)
        .map(visit -> new Recorded(unitId, visit, Outcome.UNCHANGED, judge(history, visit)));
  }

  private UnitHistory history(String unitId) {
    return fleet
        .history(unitId)
        .filter(ownVisits::there)
        .orElseThrow(() -> UnitLock.unknown(unitId));
  }

  private static Optional<Visit> find(UnitHistory history, String number) {
    return history.lastVisit(visit -> visit.number().equals(number));
  }

  private Judgement judge(UnitHistory history, Visit visit) {
    return verdicts.of(scoring.assess(history, visit.date()), visit);
  }

  private static Problem refusal(List<FieldProblem> problems) {
    List<Problem.FieldError> errors =
        problems.stream()
            .map(p -> new Problem.FieldError(p.path(), p.value(), p.message()))
            .toList();
    String detail =
        errors.size() == 1
            ? errors.get(0).field() + ": " + errors.get(0).message()
            : errors.size() + " fields need mending; see errors.";
    return new Problem(422, "wrong-visit", "The visit cannot be taken as it is", detail, errors);
  }
}
