package coldround.sheet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** An invented equipment list with the kinds of cells such lists have. */
final class SampleTable {

  static final List<String> HEADER =
      List.of(
          "unit_ref", "site", "installed_on", "refrigerant", "charge_kg", "price", "note", "link");

  private static final String[] SITES = {
    "North store", "Harbour Café", "Mill, Building 2", "O'Hara's Deli", "Depot", "Lake View Kitchen"
  };
  private static final String[] NOTES = {
    "coil ok",
    "",
    "fan noisy, check bearing",
    "door seal 5\" short on the left, told the owner",
    "the old \"Polar\" unit; keep the key at reception",
    "cleaned",
    "reads 4 °C at the door, 2 °C inside",
    "",
    "needs a longer ladder. No parking in front, use the yard"
  };

  private SampleTable() {}

  static List<List<String>> rows(int count) {
    Random random = new Random(7);
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      rows.add(row(i, random));
    }
    return rows;
  }

  private static List<String> row(int i, Random random) {
    return List.of(
        String.format("U-%04d", 1000 + i * 7),
        SITES[random.nextInt(SITES.length)],
        LocalDate.of(2009, 1, 1).plusDays(random.nextInt(5000)).toString(),
        new String[] {"R-404A", "R-134a", "R-448A", "R-290"}[random.nextInt(4)],
        String.format(java.util.Locale.ROOT, "%.2f", random.nextDouble() * 9),
        "$" + (200 + random.nextInt(9000)),
        NOTES[random.nextInt(NOTES.length)],
        "https://example.com/u/" + (i * 31 % 997));
  }
}
