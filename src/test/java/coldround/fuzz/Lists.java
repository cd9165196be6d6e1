package coldround.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Lists to be imported: with columns that there are, and cells of any kind. */
final class Lists {

  private static final List<String> HEADERS =
      List.of(
          "customer,name,email,note",
          "customer,site,name,address,latitude,longitude,elevation [m],time_zone,visiting_hours",
          "customer,site,unit,kind,maker,installed,refrigerant,charge [lb],high_cutout"
              + " [psig],retired",
          "customer,site,unit,visit,date,purpose,ambient [degF],head_pressure"
              + " [psig],condenser_coil,work,faults,note",
          "customer,site,unit,visit,quantity,part,value,measure,not_taken",
          "customer,site,unit,date,failure_mode,cause,downtime [h]",
          "technician,name,latitude,longitude,hours,competences",
          "from,to,minutes,distance [km]");

  private static final List<String> CELLS =
      List.of(
          "Fuzz",
          "walk-in-cooler",
          "2026-05-12",
          "148",
          "-148",
          "1e308",
          "n/t: no port",
          "-",
          "heavy",
          "leak-repaired;inspected",
          "high-head-lockout",
          "Mo-Fr 07:00-17:00",
          "head_pressure",
          "psig",
          "America/New_York",
          "91",
          "181",
          "=1+1",
          "\"open",
          "\"two\nlines\"",
          "R-404A");

  private Lists() {}

  static String csv(Pool pool, Random random) {
    String separator = random.nextInt(4) > 0 ? "," : List.of(";", "\t", "|").get(random.nextInt(3));
    String header = HEADERS.get(random.nextInt(HEADERS.size()));
    List<String> columns = new ArrayList<>(List.of(header.split(",")));
    if (random.nextInt(6) == 0) {
      columns.add(random.nextInt(columns.size()), plain(Wild.text(random)));
    }
    StringBuilder text = new StringBuilder(String.join(separator, columns));
    int rows = random.nextInt(20) == 0 ? random.nextInt(400) : random.nextInt(8);
    for (int row = 0; row < rows; row++) {
      text.append(random.nextInt(30) == 0 ? "\r" : "\n");
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        cells.add(cell(column, pool, random));
      }
      if (random.nextInt(20) == 0) {
        cells.add("one too many");
      }
      text.append(String.join(separator, cells));
    }
    return text.append(random.nextBoolean() ? "\n" : "").toString();
  }

  private static String cell(String column, Pool pool, Random random) {
    String name = column.replaceAll(" \\[.*", "");
    return switch (random.nextInt(8)) {
      case 0 -> plain(Wild.text(random));
      case 1 -> "";
      case 2, 3, 4 -> CELLS.get(random.nextInt(CELLS.size()));
      default -> plain(pool.query(name, random));
    };
  }

  private static String plain(String text) {
    return text.contains("\"") || text.contains(",")
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }
}
