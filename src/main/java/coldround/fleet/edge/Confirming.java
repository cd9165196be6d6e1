package coldround.fleet.edge;

import coldround.access.Audit;
import coldround.fleet.Cells;
import coldround.fleet.Correction;
import coldround.fleet.FleetListener;
import coldround.fleet.Kind;
import coldround.fleet.Plausibility;
import coldround.fleet.Reading;
import coldround.fleet.UnitIds;
import coldround.fleet.Visit;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.OptionalLong;

/** Lets a reading that is not believed take part again, or takes that back. */
@ApplicationScoped
class Confirming {

  /**
   * Which reading.
   *
   * @param part empty for a quantity with one part
   */
  record Named(String unit, String visit, String quantity, String part) {
    boolean names(Reading reading) {
      return reading.quantity().equals(quantity) && reading.part().equals(part);
    }
  }

  private final EntityManager entities;
  private final Plausibility plausibility;
  private final StoredCorrections corrections;
  private final LastHistory last;
  private final Instance<FleetListener> listeners;
  private final Audit audit;

  @Inject
  Confirming(
      EntityManager entities,
      Plausibility plausibility,
      StoredCorrections corrections,
      LastHistory last,
      @Any Instance<FleetListener> listeners,
      Audit audit) {
    this.entities = entities;
    this.plausibility = plausibility;
    this.corrections = corrections;
    this.last = last;
    this.listeners = listeners;
    this.audit = audit;
  }

  /**
   * @return the reading as it now stands
   * @throws Problem 404 where there is no such reading, 409 where it has no value to confirm
   */
  @Transactional
  Reading set(Named named, boolean confirmed) {
    OptionalLong id = UnitIds.number(named.unit());
    UnitRow unit =
        id.isEmpty()
            ? null
            : entities.find(UnitRow.class, id.getAsLong(), LockModeType.PESSIMISTIC_WRITE);
    if (unit == null) {
      throw Problem.notFound("unit " + named.unit());
    }
    VisitRow row = entities.find(VisitRow.class, new VisitRow.Key(unit.id, named.visit()));
    if (row == null) {
      throw Problem.notFound("visit '" + named.visit() + "' of unit '" + named.unit() + "'");
    }
    Visit before = row.read();
    Visit now = changed(before, named, confirmed, Place.of(unit));
    if (!now.equals(before)) {
      store(row, before, now);
      audit.noteOfUnit(
          named.unit(),
          "reading",
          named.unit() + "/" + named.visit() + "/" + named.quantity(),
          confirmed ? "confirmed" : "unconfirmed",
          said(find(before, named)),
          said(find(now, named)));
      listeners.forEach(listener -> listener.changed(List.of(named.unit())));
    }
    return find(now, named);
  }

  private Visit changed(Visit before, Named named, boolean confirmed, Place place) {
    Reading reading = find(before, named);
    if (reading.value() == null) {
      throw Problem.conflict(
          "There is no value to confirm: %s was not taken, %s."
              .formatted(named.quantity(), reading.notTaken()));
    }
    Reading other =
        confirmed
            ? reading.asConfirmed()
            : new Reading(reading.quantity(), reading.part(), reading.value(), "", "");
    List<Reading> readings =
        before.readings().stream().map(one -> named.names(one) ? other : one).toList();
    return plausibility.checked(before.with(readings), place.unit(), place.atmosphereKpa());
  }

  private static Reading find(Visit visit, Named named) {
    return visit.readings().stream()
        .filter(named::names)
        .findFirst()
        .orElseThrow(
            () ->
                Problem.notFound(
                    "reading '%s%s' of visit '%s'"
                        .formatted(
                            named.quantity(),
                            named.part().isEmpty() ? "" : "/" + named.part(),
                            named.visit())));
  }

  private static String said(Reading reading) {
    return Cells.told(reading) + (reading.suspect().isEmpty() ? "" : ", not believed");
  }

  private void store(VisitRow row, Visit before, Visit now) {
    last.forget();
    row.write(now);
    Notes notes = new Notes();
    notes.changed(Kind.VISITS, row.unitId, row.number, Cells.of(before), Cells.of(now));
    corrections.keep(notes.corrections(), Correction.CONFIRMATION);
    entities.flush();
    entities.clear();
  }
}
