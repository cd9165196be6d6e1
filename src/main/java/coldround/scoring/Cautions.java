package coldround.scoring;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/** What to beware of in which situation: scoring/cautions.csv. */
public final class Cautions {

  private static final String FILE = "cautions.csv";
  static final Set<String> SITUATIONS =
      Set.of(
          "always",
          "electrical",
          "circuit",
          "walk-in",
          "A2L",
          "A3",
          "toxic",
          "CO2",
          "coil-cleaner",
          "food",
          "roof",
          "attic");

  private record Caution(String situation, String text) {}

  private final List<Caution> cautions;

  private Cautions(List<Caution> cautions) {
    this.cautions = cautions;
  }

  public static Cautions load(RuleTables tables) {
    return new Cautions(tables.read(FILE, "caution", Cautions::caution));
  }

  private static Caution caution(TableRow row) {
    row.source();
    return new Caution(row.oneOf("situation", SITUATIONS), row.required("text"));
  }

  /** Texts for these situations, in the order of the table. */
  public List<String> of(Collection<String> situations) {
    return cautions.stream()
        .filter(caution -> situations.contains(caution.situation))
        .map(Caution::text)
        .toList();
  }
}
