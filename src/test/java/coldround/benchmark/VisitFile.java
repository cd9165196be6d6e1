package coldround.benchmark;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** An invented contractor of any size as files: lists of customers, sites and units, and visits. */
final class VisitFile {

  static final List<String> COLUMNS =
      List.of(
          "customer",
          "site",
          "unit",
          "visit",
          "date",
          "technician",
          "purpose",
          "ambient [degF]",
          "head_pressure [psig]",
          "suction_pressure [psig]",
          "liquid_line [degF]",
          "suction_line [degF]",
          "box [degF]",
          "evaporator_in [degF]",
          "evaporator_out [degF]",
          "voltage_l1_l2 [V]",
          "voltage_l2_l3 [V]",
          "compressor [A]",
          "condenser_fan [A]",
          "condenser_coil",
          "work",
          "note");

  private static final int VISITS_OF_A_UNIT = 100;
  private static final int UNITS_OF_A_SITE = 20;

  private final int rows;
  private final int units;

  VisitFile(int rows) {
    this.rows = rows;
    this.units = Math.max(1, rows / VISITS_OF_A_UNIT);
  }

  private int sites() {
    return (units + UNITS_OF_A_SITE - 1) / UNITS_OF_A_SITE;
  }

  String customers() {
    return "customer,name\r\nC1,Invented Markets\r\n";
  }

  String sitesText() {
    StringBuilder text = new StringBuilder("customer,site,jurisdiction,elevation [m]\r\n");
    for (int i = 0; i < sites(); i++) {
      text.append("C1,S").append(i).append(",US-OR,").append(20 + i % 900).append("\r\n");
    }
    return text.toString();
  }

  String unitsText() {
    StringBuilder text =
        new StringBuilder(
            "customer,site,unit,kind,installed,refrigerant,charge [lb],compressor_rated [A]\r\n");
    for (int i = 0; i < units; i++) {
      text.append(place(i)).append(",walk-in-cooler,2012-04-30,R-404A,11,12\r\n");
    }
    return text.toString();
  }

  private static String place(int unit) {
    return "C1,S" + unit / UNITS_OF_A_SITE + ",U" + unit;
  }

  /** In the order of their days, as a log is kept, so that units follow each other. */
  void writeVisits(Path file) throws IOException {
    Random random = new Random(1);
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      out.write(String.join(",", COLUMNS) + "\r\n");
      for (int i = 0; i < rows; i++) {
        out.write(line(i, random));
      }
    }
  }

  private String line(int i, Random random) {
    int ambient = 50 + random.nextInt(50);
    String note = i % 5 == 0 ? "\"coil dusty, left side \"\"worst\"\"\"" : "";
    return String.format(
        Locale.ROOT,
        "%s,%d,20%02d-%02d-%02d,T%d,planned,%d,%d,%d.%d,%d,%d,%d,%d,%d,%d,%d,%d.%d,0.%d,moderate,"
            + "inspected,%s\r\n",
        place(i % units),
        i,
        10 + (int) (15L * i / rows),
        1 + i % 12,
        1 + i % 28,
        i % 9,
        ambient,
        // near a split of 30 degF: R-404A rises by about 4 psi a degF there
        130 + 4 * (ambient - 40),
        50 + random.nextInt(20),
        random.nextInt(10),
        ambient + 20,
        45 + random.nextInt(10),
        34 + random.nextInt(6),
        36 + random.nextInt(5),
        28 + random.nextInt(4),
        205 + random.nextInt(8),
        205 + random.nextInt(8),
        8 + random.nextInt(4),
        random.nextInt(10),
        5 + random.nextInt(4),
        note);
  }
}
