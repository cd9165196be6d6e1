package coldround.fleet.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import coldround.Api;
import coldround.fleet.Correction;
import coldround.fleet.Entry;
import coldround.fleet.Fleet;
import coldround.fleet.FleetWriting;
import coldround.fleet.Kind;
import coldround.fleet.UnitHistory;
import coldround.fleet.UnitLocks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A unit that a transaction asks for again is not read again, but where it may be another. */
@QuarkusTest
class RememberedUnitTest {

  @Inject Fleet fleet;
  @Inject FleetWriting writing;
  @Inject UnitLocks locks;
  @Inject EntityManager entities;

  private String unit;

  @BeforeEach
  void unit() {
    Api.put("customers", "customer,name\nREMEMBERED,Remembered\n");
    Api.put("sites", "customer,site\nREMEMBERED,S\n");
    Api.put("units", "customer,site,unit,kind,maker\nREMEMBERED,S,U1,walk-in-cooler,First\n");
    unit =
        asPlanner()
            .queryParam("customer", "REMEMBERED")
            .get("/api/v1/units")
            .path("items[0].unit.id");
  }

  private String maker() {
    return fleet.history(unit).orElseThrow().unit().maker();
  }

  @Test
  void whatAnotherChangedBeforeItWasHeldIsSeen() {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              assertEquals("First", maker());
              QuarkusTransaction.requiringNew()
                  .run(
                      () ->
                          entities
                              .createNativeQuery(
                                  "update unit set maker = 'Second' where maker = 'First'")
                              .executeUpdate());
              locks.hold(List.of(unit));
              assertEquals("Second", maker());
            });
  }

  @Test
  void whatTheTransactionItselfChangedIsSeen() {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              locks.hold(List.of(unit));
              assertEquals("First", maker());
              write(Kind.UNITS, Map.of("maker", "Third"));
              assertEquals("Third", maker());
            });
  }

  /** Its keys and what else a line says. */
  private void write(Kind kind, Map<String, Object> more) {
    Map<String, Object> said = new HashMap<>(more);
    said.putAll(Map.of("customer", "REMEMBERED", "site", "S", "unit", "U1"));
    writing.write(kind, List.of(new Entry(0, said)), Correction.FIELD);
  }

  private UnitHistory history() {
    return fleet.history(unit).orElseThrow();
  }

  private UnitHistory worked() {
    List<UnitHistory> worked = new ArrayList<>();
    fleet.eachHistory(List.of(unit), worked::add);
    return worked.get(0);
  }

  @Test
  void visitsAndFaultsThatTheTransactionWroteAreSeen() {
    LocalDate day = LocalDate.of(2026, 3, 4);
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              locks.hold(List.of(unit));
              int visits = history().visits().size();
              write(Kind.VISITS, Map.of("visit", "R-" + visits, "date", day));
              assertEquals(visits + 1, worked().visits().size());
              assertSame(worked(), history(), "not read again");
              int faults = history().reportedFaults().size();
              write(Kind.FAULTS, Map.of("date", day.plusDays(faults), "failure_mode", "noise"));
              assertEquals(faults + 1, history().reportedFaults().size());
              write(Kind.VISITS, Map.of("visit", "R-" + visits, "date", day, "note", "again"));
              assertEquals("again", history().lastVisit(v -> true).orElseThrow().note());
            });
  }
}
