package coldround.upkeep;

import coldround.fleet.Fault;
import coldround.fleet.Reading;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Histories of units as wild as an import lets through, each from its seed alone. */
final class RandomFleet {

  static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

  private static final String[] KINDS = {
    "walk-in-cooler",
    "walk-in-freezer",
    "reach-in-cooler",
    "display-case",
    "ice-machine",
    "condensing-unit",
    "split-air-conditioner",
    "heat-pump",
    "chiller",
    "",
    "wardrobe"
  };
  private static final String[] GASES = {
    "R-404A", "R-22", "R-134a", "R-290", "R-717", "R-744", "R-12", "R-454B", "", "R-9999"
  };
  private static final String[] PLACES = {"US-VA", "DE", "US", "", "XX", "CA-ON"};
  private static final String[] SURROUNDINGS = {"clean", "dusty", "greasy", "outdoor", ""};
  private static final String[] WORK = {
    "condenser-coil-cleaned",
    "evaporator-coil-cleaned",
    "inspected",
    "cut-out-reset",
    "leak-inspected",
    "leak-repaired",
    "refrigerant-changed",
    "condenser-fan-replaced",
    "drain-cleared"
  };
  private static final String[] MODES = {
    "high-head-lockout", "refrigerant-leak", "coil-iced", "compressor-failed", "other", "sang"
  };
  private static final String[] COIL = {"clean", "light", "moderate", "heavy", "blocked"};
  private static final String[] PART = {"good", "worn", "bad"};

  private final Random random;

  private RandomFleet(long seed) {
    random = new Random(seed);
  }

  static UnitHistory history(long seed) {
    return new RandomFleet(seed).history();
  }

  private UnitHistory history() {
    List<Visit> visits = new ArrayList<>();
    int count = random.nextInt(16);
    for (int i = 0; i < count; i++) {
      visits.add(visit(i));
    }
    List<Fault> faults = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      LocalDate date = TODAY.minusDays(random.nextInt(1200));
      faults.add(
          new Fault(date, one(MODES), "", maybe() ? date.plusDays(3) : null, null, null, ""));
    }
    return new UnitHistory(site(), unit(), visits, faults);
  }

  private Visit visit(int number) {
    List<Reading> readings = new ArrayList<>();
    reading(readings, "ambient", 20, 115, "degF");
    reading(readings, "head_pressure", -5, 700, "psig");
    reading(readings, "suction_pressure", -10, 150, "psig");
    reading(readings, "liquid_line", 20, 150, "degF");
    reading(readings, "suction_line", -40, 100, "degF");
    reading(readings, "box", -30, 90, "degF");
    reading(readings, "voltage_l1_l2", 180, 500, "V");
    reading(readings, "voltage_l2_l3", 180, 500, "V");
    reading(readings, "voltage_l1_l3", 180, 500, "V");
    reading(readings, "compressor", 0, 60, "A");
    reading(readings, "condenser_fan", 0, 3, "A");
    reading(readings, "refrigerant_added", 0, 40, "lb");
    Map<String, String> findings = new HashMap<>();
    if (maybe()) {
      findings.put("condenser_coil", one(COIL));
      findings.put("evaporator_coil", one(COIL));
      findings.put("contactor", one(PART));
      findings.put("door", one(PART));
    }
    List<String> work = maybe() ? List.of(one(WORK), one(WORK)) : List.of();
    List<String> faults = random.nextInt(4) == 0 ? List.of(one(MODES)) : List.of();
    String purpose = one("planned", "breakdown", "survey", "");
    LocalDate date = TODAY.minusDays(random.nextInt(1200));
    return new Visit("V" + number, date, "T1", purpose, readings, findings, work, faults, "");
  }

  private void reading(List<Reading> to, String quantity, double least, double most, String unit) {
    int chance = random.nextInt(4);
    if (chance == 0) {
      to.add(Reading.notTaken(quantity, "port blocked"));
    } else if (chance > 1) {
      double value = Math.round((least + random.nextDouble() * (most - least)) * 10) / 10.0;
      to.add(Reading.taken(quantity, Quantity.of(value, unit)));
    }
  }

  private Site site() {
    Quantity design = maybe() ? Quantity.of(70 + random.nextInt(50), "degF") : null;
    Double latitude = maybe() ? 38.0 : null;
    return new Site(
        "C",
        "S",
        "",
        "",
        latitude,
        latitude,
        null,
        null,
        one(PLACES),
        one(SURROUNDINGS),
        "",
        design);
  }

  private Unit unit() {
    Map<String, Quantity> plate = new HashMap<>();
    plate(plate, "charge", 0.2, 800, "lb");
    plate(plate, "high_cutout", 50, 650, "psig");
    plate(plate, "design_split", 5, 45, "deltaF");
    plate(plate, "compressor_rated", 1, 60, "A");
    plate(plate, "condenser_fan_rated", 0.2, 4, "A");
    plate(plate, "supply", 110, 480, "V");
    plate(plate, "box_setpoint", -20, 60, "degF");
    LocalDate installed = maybe() ? TODAY.minusDays(random.nextInt(12000)) : null;
    LocalDate retired = random.nextInt(9) == 0 ? TODAY.minusDays(random.nextInt(900) - 300) : null;
    return new Unit(
        "u" + random.nextInt(1000),
        "C",
        "S",
        "T",
        one(KINDS),
        "",
        "",
        "",
        "",
        installed,
        one(GASES),
        one("outdoors", "roof", "indoors", "attic", ""),
        retired,
        plate);
  }

  private void plate(
      Map<String, Quantity> plate, String column, double least, double most, String unit) {
    if (maybe()) {
      plate.put(column, Quantity.of(least + random.nextDouble() * (most - least), unit));
    }
  }

  private boolean maybe() {
    return random.nextInt(3) > 0;
  }

  private String one(String... of) {
    return of[random.nextInt(of.length)];
  }
}
