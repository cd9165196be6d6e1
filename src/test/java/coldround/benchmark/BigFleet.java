package coldround.benchmark;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Random;

/**
 * An invented contractor with many customers as files: 20 sites each, 10 units a site, and four
 * visits at every tenth unit.
 */
final class BigFleet {

  private static final int SITES_OF_A_CUSTOMER = 20;
  private static final int UNITS_OF_A_SITE = 10;
  private static final int VISITED = 10;
  private static final String[] KINDS = {
    "walk-in-cooler", "walk-in-freezer", "reach-in-cooler", "ice-machine", "chiller"
  };
  private static final String[] GASES = {"R-404A", "R-22", "R-134a", "R-448A", "R-410A"};

  private final int units;

  BigFleet(int units) {
    this.units = units;
  }

  /** Has the service take it as files, and all its changes have their places in the feed. */
  void load(BuiltService service) throws IOException, InterruptedException {
    long start = System.nanoTime();
    service.upload("customers", BodyPublishers.ofString(customers()));
    service.upload("sites", BodyPublishers.ofString(sites()));
    service.upload("units", BodyPublishers.ofString(unitList()));
    service.upload("visits", BodyPublishers.ofString(visits()));
    service.get("/api/v1/feed/snapshot?limit=1");
    System.out.printf("taken as files in %.0f s%n", (System.nanoTime() - start) / 1e9);
  }

  /** How many units have visits. */
  int visited() {
    return (units + VISITED - 1) / VISITED;
  }

  /**
   * @param tag of one of its units
   */
  boolean isVisited(String tag) {
    return Integer.parseInt(tag.substring(2)) % VISITED == 0;
  }

  private int sitesCount() {
    return (units + UNITS_OF_A_SITE - 1) / UNITS_OF_A_SITE;
  }

  /** Code of a customer that is there in any fleet. */
  String customer() {
    return "C0";
  }

  /** Code of a site of that customer. */
  String site() {
    return "S1";
  }

  private String customers() {
    StringBuilder text = new StringBuilder("customer,name\r\n");
    int customers = (sitesCount() + SITES_OF_A_CUSTOMER - 1) / SITES_OF_A_CUSTOMER;
    for (int i = 0; i < customers; i++) {
      text.append("C" + i + ",Customer number " + i + "\r\n");
    }
    return text.toString();
  }

  private String sites() {
    StringBuilder text = new StringBuilder("customer,site,name,jurisdiction,surroundings\r\n");
    for (int i = 0; i < sitesCount(); i++) {
      text.append("C" + i / SITES_OF_A_CUSTOMER + ",S" + i + ",Dock street " + i);
      text.append(",US-VA,greasy\r\n");
    }
    return text.toString();
  }

  private static String place(int unit) {
    int site = unit / UNITS_OF_A_SITE;
    return "C" + site / SITES_OF_A_CUSTOMER + ",S" + site + ",U-" + unit;
  }

  private String unitList() {
    Random chance = new Random(1);
    StringBuilder text =
        new StringBuilder(
            "customer,site,unit,kind,maker,model,serial,installed,refrigerant,charge [lb],"
                + "high_cutout [psig],compressor_rated [A]\r\n");
    for (int i = 0; i < units; i++) {
      text.append(place(i) + "," + KINDS[i % KINDS.length] + ",Thornfield,WC " + i % 500);
      text.append(",SN" + i + ",20" + (10 + chance.nextInt(15)) + "-04-30,");
      text.append(GASES[chance.nextInt(GASES.length)] + ",11,410,12\r\n");
    }
    return text.toString();
  }

  private String visits() {
    Random chance = new Random(2);
    StringBuilder text =
        new StringBuilder(
            "customer,site,unit,visit,date,ambient [degF],head_pressure [psig],"
                + "suction_pressure [psig],box [degF],compressor [A],condenser_coil,work\r\n");
    for (int i = 0; i < units; i += VISITED) {
      for (int n = 1; n <= 4; n++) {
        int ambient = 60 + chance.nextInt(35);
        text.append(place(i) + ",V" + n + ",2026-0" + 2 * n + "-1" + chance.nextInt(10));
        text.append("," + ambient + "," + (170 + 4 * (ambient - 50)) + ",");
        text.append(50 + chance.nextInt(20) + "," + (34 + chance.nextInt(5)) + ",9.5,moderate,");
        text.append(n == 1 ? "condenser-coil-cleaned\r\n" : "inspected\r\n");
      }
    }
    return text.toString();
  }
}
