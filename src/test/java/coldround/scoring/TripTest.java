package coldround.scoring;

import static coldround.scoring.UnitFile.TODAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Quantity;
import coldround.refrigerant.SaturationCurve;
import java.time.LocalDate;
import java.time.Month;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TripTest {

  private static final SaturationCurve GAS =
      Rules.GASES.refrigerants().curve("R-404A").orElseThrow();

  /** A unit that locks out at 145 °F condensing, read today at that split. */
  private static UnitFile unit(double splitF) {
    double kpa = GAS.midpointPressureKpa((145 - 32) / 1.8);
    UnitFile file = new UnitFile().plate("high_cutout", kpa, "kPa");
    file.visit(0).split(85, splitF);
    return file;
  }

  /** By hand: 145 − 35 = 110 °F, design ambient outdoors in July 95 °F: 15 °F of margin. */
  @Test
  void aUnitLocksOutWhereItsSplitReachesTheCutOut() {
    TripState trip = unit(35).assessed().trip();
    assertEquals((110 - 32) / 1.8, trip.tripAmbientC().orElseThrow(), 0.05);
    assertEquals((95 - 32) / 1.8, trip.designAmbientC().orElseThrow(), 1e-9);
    assertEquals(15 / 1.8, trip.marginK().orElseThrow(), 0.05);
    assertTrue(trip.tripAmbientLowC().orElseThrow() < trip.tripAmbientC().orElseThrow());
    assertEquals(13, trip.months().size());
    assertEquals(trip.designAmbientC().orElseThrow(), trip.months().get(0).designAmbientC());
  }

  @Test
  void aGaugeSettingIsOverTheAirPressureOfTheSite() {
    UnitFile file = new UnitFile().plate("high_cutout", 400, "psig");
    double kpa = Quantity.of(400, "psig").pressureKpa(101.325);
    double expected = GAS.midpointTemperatureC(kpa);
    assertEquals(expected, file.assessed().trip().cutOutC().orElseThrow(), 1e-9);
  }

  /** Day by day, apart from the closed form of the program. */
  @ParameterizedTest
  @CsvSource({"30", "35", "39.5", "40.5", "48", "60"})
  void theDayTheMarginRunsOutIsTheFirstOneBelowTheLimit(double splitF) {
    Assessment assessment = unit(splitF).assessed();
    TripState trip = assessment.trip();
    LocalDate first = null;
    for (int day = 0; day <= 365 && first == null; day++) {
      LocalDate date = TODAY.plusDays(day);
      double tripC = trip.tripAmbientC().orElseThrow() - day * assessment.coil().foulingKPerDay();
      double designC =
          trip.months()
              .get((int) ChronoUnit.MONTHS.between(TODAY.withDayOfMonth(1), date.withDayOfMonth(1)))
              .designAmbientC();
      first = tripC - designC < trip.limitK() ? date : null;
    }
    assertEquals(first, trip.runsOut().orElse(null));
  }

  @Test
  void theOwnDesignAmbientOfTheSiteGoesFirst() {
    UnitFile file = unit(35);
    file.designAmbient = Quantity.of(105, "degF");
    assertEquals(5 / 1.8, file.assessed().trip().marginK().orElseThrow(), 0.05);
  }

  // packaged table: roof 105, attic 120, indoors 90 °F in July
  @ParameterizedTest
  @CsvSource({"outdoors, 95", "roof, 105", "attic, 120", "indoors, 90", "'', 95"})
  void withoutItThePlaceOfTheCondenserDecides(String place, double designF) {
    UnitFile file = unit(35);
    file.place = place;
    assertEquals((designF - 32) / 1.8, file.assessed().trip().designAmbientC().orElseThrow(), 1e-9);
  }

  @Test
  void southOfTheEquatorTheMonthsAreTurnedRound() {
    UnitFile south = unit(35);
    south.latitude = -33.0;
    TripState trip = south.assessed().trip();
    assertEquals(Month.JULY, trip.months().get(0).month().getMonth());
    assertEquals((95 - 45 - 32) / 1.8, trip.months().get(0).designAmbientC(), 1e-9);
    assertEquals((95 - 32) / 1.8, trip.months().get(6).designAmbientC(), 1e-9);
  }

  @Test
  void withoutASettingTheReasonAsksForIt() {
    TripState trip = new UnitFile().assessed().trip();
    assertTrue(trip.tripAmbientC().isEmpty() && trip.runsOut().isEmpty());
    assertEquals("cut-out-unknown", trip.missing().orElseThrow().code());
    UnitFile absurd = new UnitFile().plate("high_cutout", 90000, "psig");
    assertEquals("cut-out-outside-table", absurd.assessed().trip().missing().orElseThrow().code());
  }
}
