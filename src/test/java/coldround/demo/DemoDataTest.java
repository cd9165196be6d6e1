package coldround.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Atmosphere;
import coldround.quantity.Measure;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.table.RuleTables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The committed lists hold together, and the generator makes the same bytes again. */
class DemoDataTest {

  private static final Path COMMITTED = Path.of("demo-data");
  private static final double COLDEST_JUDGED_F = 60;

  private final Listing customers = listing("customers");
  private final Listing sites = listing("sites");
  private final Listing units = listing("units");
  private final Listing visits = listing("visits");
  private final Listing readings = listing("readings");
  private final Listing faults = listing("faults");
  private final Listing technicians = listing("technicians");
  private final Refrigerants refrigerants = Refrigerants.load(new RuleTables("scoring", null));

  @TempDir Path folder;

  private static Listing listing(String name) {
    return Listing.read(COMMITTED.resolve(name + ".csv"));
  }

  @ParameterizedTest
  @CsvSource({"en, US, UTC", "ar, EG, Pacific/Auckland", "tr, TR, America/Los_Angeles"})
  void theGeneratorMakesTheCommittedBytesWhateverTheLocaleAndZone(
      String language, String country, String zone) throws IOException {
    Locale locale = Locale.getDefault();
    TimeZone timeZone = TimeZone.getDefault();
    try {
      Locale.setDefault(new Locale.Builder().setLanguage(language).setRegion(country).build());
      TimeZone.setDefault(TimeZone.getTimeZone(zone));
      Demo.make(folder);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(timeZone);
    }
    assertEquals(lists(COMMITTED), lists(folder));
    for (String list : lists(folder)) {
      byte[] committed = Files.readAllBytes(COMMITTED.resolve(list));
      assertArrayEquals(committed, Files.readAllBytes(folder.resolve(list)), list);
    }
  }

  private static Set<String> lists(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".csv"))
          .collect(Collectors.toSet());
    }
  }

  @Test
  void thereIsAsMuchAsTheStorySays() {
    assertEquals(4, customers.rows().size());
    assertEquals(15, sites.rows().size());
    assertEquals(90, units.rows().size());
    assertTrue(units.values("kind").size() >= 8);
    assertTrue(units.values("refrigerant").containsAll(Set.of("R-12", "R-502", "R-290", "R-454B")));
    assertTrue(visits.rows().size() > 600 && faults.rows().size() > 100);
  }

  @Test
  void everyReferenceIsThere() {
    Set<String> siteKeys = sites.keys("customer", "site");
    assertTrue(customers.keys("customer").containsAll(sites.keys("customer")));
    assertTrue(siteKeys.containsAll(units.keys("customer", "site")));
    Set<String> unitKeys = units.keys("customer", "site", "unit");
    assertTrue(unitKeys.containsAll(visits.keys("customer", "site", "unit")));
    assertTrue(unitKeys.containsAll(faults.keys("customer", "site", "unit")));
    Set<String> visitKeys = visits.keys("customer", "site", "unit", "visit");
    assertTrue(visitKeys.containsAll(readings.keys("customer", "site", "unit", "visit")));
    assertTrue(technicians.keys("technician").containsAll(visits.keys("technician")));
  }

  @ParameterizedTest
  @CsvSource({
    "customers, customer",
    "sites, customer;site",
    "units, customer;site;unit",
    "visits, customer;site;unit;visit",
    "visits, customer;site;unit;date",
    "readings, customer;site;unit;visit;quantity;part",
    "faults, customer;site;unit;date;failure_mode",
    "travel-times, from;to"
  })
  void noNaturalKeyStandsTwice(String list, String key) {
    Listing listing = listing(list);
    assertEquals(listing.rows().size(), listing.keys(key.split(";")).size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"visits", "faults"})
  void datesAscendAndLieInTheYearsOfTheStory(String list) {
    List<LocalDate> days = listing(list).rows().stream().map(row -> day(row, "date")).toList();
    assertEquals(days.stream().sorted().toList(), days);
    assertFalse(days.get(0).isBefore(LocalDate.of(2023, 11, 1)));
    assertFalse(days.get(days.size() - 1).isAfter(LocalDate.of(2026, 11, 25)));
  }

  @Test
  void noUnitIsVisitedBeforeItsInstallationOrAfterItsRetirement() {
    for (Map<String, String> visit : visits.rows()) {
      Map<String, String> unit = unit(visit);
      LocalDate day = day(visit, "date");
      assertTrue(unit.get("installed").isEmpty() || !day.isBefore(day(unit, "installed")));
      assertTrue(unit.get("retired").isEmpty() || !day.isAfter(day(unit, "retired")));
    }
  }

  @Test
  void everyHeadPressureFollowsFromAmbientAndSplit() {
    int judged = 0;
    for (Map<String, String> visit : visits.rows()) {
      if (judgeable(visit)) {
        double splitF = splitF(visit);
        double designF = design(unit(visit));
        assertTrue(
            splitF > designF - 8 && splitF < designF + 36,
            () -> "split " + splitF + " against " + designF + ": " + visit);
        judged++;
      }
    }
    assertTrue(judged > 300, "only " + judged + " readings could be judged");
  }

  @Test
  void noUnitRunsAboveItsCutOut() {
    for (Map<String, String> visit : visits.rows()) {
      String cutout = unit(visit).get("high_cutout [psig]");
      if (taken(visit, "head_pressure [psig]") && !cutout.isEmpty()) {
        assertTrue(
            number(visit, "head_pressure [psig]") <= Double.parseDouble(cutout), visit::toString);
      }
    }
  }

  /** Superheat is over the dew point: gas that still holds liquid would wash out a compressor. */
  @Test
  void everySuctionLineIsWarmerThanTheEvaporator() {
    for (Map<String, String> visit : visits.rows()) {
      if (taken(visit, "suction_pressure [psig]") && taken(visit, "suction_line [degF]")) {
        double kpa = absoluteKpa(visit, "suction_pressure [psig]");
        double dewF = Measure.DEG_F.fromBase(curve(visit).dewTemperatureC(kpa));
        assertTrue(number(visit, "suction_line [degF]") > dewF + 4, visit::toString);
      }
    }
  }

  /** Breakdowns are read as found; the clean split is the lowest so far, at most the design's. */
  @Test
  void aLockoutOnHighHeadFollowsARiseOfTheSplit() {
    Map<String, Double> lowest = new HashMap<>();
    int explained = 0;
    for (Map<String, String> visit : visits.rows()) {
      if (judgeable(visit)) {
        double clean =
            lowest.merge(
                Listing.key(visit, "customer", "site", "unit"),
                Math.min(splitF(visit), design(unit(visit))),
                Math::min);
        if (visit.get("faults").equals("high-head-lockout")) {
          assertTrue(splitF(visit) > clean + 5, visit::toString);
          explained++;
        }
      }
    }
    assertTrue(explained > 30, "only " + explained + " lockouts with a split");
  }

  @Test
  void whatFailedOnAVisitStandsInTheFaultListToo() {
    Set<String> listed = faults.keys("customer", "site", "unit", "date", "failure_mode");
    Set<String> noted = new HashSet<>();
    for (Map<String, String> visit : visits.rows()) {
      if (!visit.get("faults").isEmpty()) {
        noted.add(Listing.key(visit, "customer", "site", "unit", "date", "faults"));
      }
    }
    assertEquals(listed, noted);
  }

  private boolean judgeable(Map<String, String> visit) {
    return taken(visit, "ambient [degF]")
        && taken(visit, "head_pressure [psig]")
        && number(visit, "ambient [degF]") >= COLDEST_JUDGED_F
        && !unit(visit).get("refrigerant").equals("R-744")
        && !unit(visit).get("design_split [deltaF]").isEmpty();
  }

  private double splitF(Map<String, String> visit) {
    double condensingC =
        curve(visit).midpointTemperatureC(absoluteKpa(visit, "head_pressure [psig]"));
    return Measure.DEG_F.fromBase(condensingC) - number(visit, "ambient [degF]");
  }

  private double absoluteKpa(Map<String, String> visit, String column) {
    double elevationM = number(sites.row(visit, "customer", "site"), "elevation [m]");
    return Measure.PSIG.toBase(number(visit, column)) + Atmosphere.pressureKpa(elevationM);
  }

  private SaturationCurve curve(Map<String, String> visit) {
    return refrigerants.curve(unit(visit).get("refrigerant")).orElseThrow();
  }

  private Map<String, String> unit(Map<String, String> row) {
    return units.row(row, "customer", "site", "unit");
  }

  private static double design(Map<String, String> unit) {
    return number(unit, "design_split [deltaF]");
  }

  private static boolean taken(Map<String, String> row, String column) {
    return !row.get(column).isEmpty() && !row.get(column).startsWith("n/t");
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static LocalDate day(Map<String, String> row, String column) {
    return LocalDate.parse(row.get(column));
  }
}
