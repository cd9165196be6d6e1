package coldround.rounds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.table.RuleTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TravelTest {

  private static final Roads ROADS = roads();
  private final Travel travel = new Travel(ROADS);

  private static Roads roads() {
    RuleTables tables = new RuleTables("scoring", null);
    Roads roads = Roads.load(tables);
    tables.check();
    return roads;
  }

  // Land's End to John o' Groats, 968.9 km: worked example of a widely read page on the haversine,
  // from memory; one degree of latitude and a quarter of a meridian by R = 6371.0088 km
  @ParameterizedTest
  @CsvSource({
    "50.066389, -5.714722, 58.643889, -3.07, 968.9, 0.1",
    "0, 10, 1, 10, 111.195, 0.001",
    "0, 10, 90, 10, 10007.557, 0.001",
    "38.2, -79, 38.2, -79, 0, 0"
  })
  void straightDistancesAreGreatCircles(
      double north1, double east1, double north2, double east2, double km, double within) {
    Place one = new Place("A/1", north1, east1);
    assertEquals(km, one.straightKm(new Place("A/2", north2, east2)), within);
  }

  @ParameterizedTest
  @CsvSource({"38.2, -79, true", "0, 0, false", ", -79, false", "91, 0, false", "0, 5, true"})
  void aPlaceWithoutUsableCoordinatesSaysSo(Double north, Double east, boolean located) {
    Place place = new Place("A/1", north, east);
    assertEquals(located, place.located());
    assertEquals(located, place.fault().isEmpty());
  }

  @Test
  void aLongerWayNeverTakesLessTimeOrFewerKilometres() {
    Leg before = ROADS.over(0);
    for (double km = 0.1; km < 200; km += 0.1) {
      Leg leg = ROADS.over(km);
      assertTrue(leg.minutes() > before.minutes() && leg.km() > before.km(), km + " km");
      assertTrue(leg.km() >= km && leg.estimated());
      assertEquals(leg.km(), ROADS.kmIn(leg.minutes()), 1e-9);
      before = leg;
    }
  }

  @Test
  void whatWasImportedGoesBeforeTheOppositeWayAndThatBeforeAnEstimate() {
    Place a = new Place("T1", 38.2, -79.0);
    Place b = new Place("A/1", 38.3, -79.0);
    Place c = new Place("A/2", 38.4, -79.0);
    Place nowhere = new Place("A/3", null, null);
    travel.put("T1", "A/1", 20, 15.0);
    travel.put("A/1", "A/2", 10, null);
    assertEquals(new Leg(20, 15, false), travel.between(a, b));
    assertEquals(new Leg(20, 15, false), travel.between(b, a));
    assertFalse(travel.between(b, c).estimated());
    assertTrue(travel.between(b, c).km() > 0);
    assertTrue(travel.between(a, c).estimated());
    assertFalse(travel.between(a, nowhere).known());
    assertEquals(0, travel.between(nowhere, nowhere).minutes());
  }
}
