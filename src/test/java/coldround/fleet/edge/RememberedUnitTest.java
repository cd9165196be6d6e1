package coldround.fleet.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.Api;
import coldround.fleet.Correction;
import coldround.fleet.Entry;
import coldround.fleet.Fleet;
import coldround.fleet.FleetWriting;
import coldround.fleet.Kind;
import coldround.fleet.UnitLocks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
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
              Map<String, Object> said =
                  Map.of("customer", "REMEMBERED", "site", "S", "unit", "U1", "maker", "Third");
              writing.write(Kind.UNITS, List.of(new Entry(0, said)), Correction.FIELD);
              assertEquals("Third", maker());
            });
  }
}
