package coldround.scoring;

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

/** Writes the history of one unit, row by row as an office would. */
final class UnitFile {

  static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

  String kind = "walk-in-cooler";
  String refrigerant = "R-404A";
  String place = "outdoors";
  String jurisdiction = "US";
  String surroundings = "outdoor";
  Double latitude = 40.0;
  Quantity designAmbient = null;
  LocalDate installed = LocalDate.of(2018, 7, 1);
  final Map<String, Quantity> plate = new HashMap<>();
  final List<VisitRow> visits = new ArrayList<>();
  final List<Fault> faults = new ArrayList<>();

  /** One visit being written down. */
  static final class VisitRow {
    final LocalDate date;
    final String number;
    String purpose = "planned";
    String note = "";
    final List<Reading> readings = new ArrayList<>();
    final Map<String, String> findings = new HashMap<>();
    final List<String> work = new ArrayList<>();
    final List<String> faults = new ArrayList<>();

    private VisitRow(String number, LocalDate date) {
      this.number = number;
      this.date = date;
    }

    VisitRow read(String quantity, double value, String measure) {
      readings.add(Reading.taken(quantity, Quantity.of(value, measure)));
      return this;
    }

    VisitRow read(String quantity, String part, double value, String measure) {
      readings.add(new Reading(quantity, part, Quantity.of(value, measure), "", ""));
      return this;
    }

    VisitRow notTaken(String quantity, String why) {
      readings.add(Reading.notTaken(quantity, why));
      return this;
    }

    VisitRow suspect(String quantity, double value, String measure, String why) {
      readings.add(new Reading(quantity, "", Quantity.of(value, measure), "", why));
      return this;
    }

    /** Ambient and the head pressure that goes with a split, of R-404A at sea level. */
    VisitRow split(double ambientF, double splitF) {
      double condensingC = (ambientF + splitF - 32) / 1.8;
      double kpa =
          Rules.GASES.refrigerants().curve("R-404A").orElseThrow().midpointPressureKpa(condensingC);
      return read("ambient", ambientF, "degF").read("head_pressure", kpa, "kPa");
    }

    VisitRow found(String part, String grade) {
      findings.put(part, grade);
      return this;
    }

    VisitRow did(String code) {
      work.add(code);
      return this;
    }

    VisitRow cleaned() {
      return did("condenser-coil-cleaned");
    }

    VisitRow fault(String mode) {
      faults.add(mode);
      return this;
    }

    VisitRow purpose(String code) {
      purpose = code;
      return this;
    }

    VisitRow note(String text) {
      note = text;
      return this;
    }

    private Visit visit() {
      return new Visit(number, date, "T1", purpose, readings, findings, work, faults, note);
    }
  }

  static UnitFile of(String kind) {
    UnitFile file = new UnitFile();
    file.kind = kind;
    return file;
  }

  UnitFile plate(String column, double value, String measure) {
    plate.put(column, Quantity.of(value, measure));
    return this;
  }

  /** A visit that many days before today. */
  VisitRow visit(int daysAgo) {
    VisitRow row = new VisitRow(String.valueOf(1000 + visits.size()), TODAY.minusDays(daysAgo));
    visits.add(row);
    return row;
  }

  UnitFile fault(int daysAgo, String mode, Integer repairedDaysAgo) {
    LocalDate repaired = repairedDaysAgo == null ? null : TODAY.minusDays(repairedDaysAgo);
    faults.add(new Fault(TODAY.minusDays(daysAgo), mode, "", repaired, null, null, ""));
    return this;
  }

  UnitHistory history() {
    Site site =
        new Site(
            "C1",
            "S1",
            "",
            "",
            latitude,
            -90.0,
            null,
            null,
            jurisdiction,
            surroundings,
            "",
            designAmbient);
    Unit unit =
        new Unit(
            "1",
            "C1",
            "S1",
            "U1",
            kind,
            "",
            "",
            "",
            "",
            installed,
            refrigerant,
            place,
            null,
            plate);
    return new UnitHistory(site, unit, visits.stream().map(VisitRow::visit).toList(), faults);
  }

  Assessment assessed() {
    return assessed(TODAY);
  }

  Assessment assessed(LocalDate asOf) {
    return Rules.SCORER.assess(history(), asOf);
  }

  static FactorScore factor(Assessment assessment, String factor) {
    return assessment.condition().factors().stream()
        .filter(score -> score.factor().equals(factor))
        .findFirst()
        .orElseThrow();
  }

  static Diagnostic figure(Assessment assessment, String name) {
    return assessment.condition().diagnostics().stream()
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static List<String> codes(FactorScore score) {
    return score.reasons().stream().map(reason -> reason.code()).toList();
  }
}
