package coldround.intake;

import coldround.fleet.Kind;
import coldround.sheet.Row;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Lists as tests write them, read by the packaged tables on 1 July 2026. */
final class Lists {

  static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

  private static final KnownRefrigerants REFRIGERANTS =
      new KnownRefrigerants() {
        @Override
        public Optional<String> designation(String written) {
          return designations().stream()
              .filter(d -> d.replace("-", "").equalsIgnoreCase(written.replace("-", "")))
              .findFirst();
        }

        @Override
        public Collection<String> designations() {
          return List.of("R-12", "R-404A", "R-410A");
        }
      };

  static final IntakeTables TABLES = tables();

  private Lists() {}

  private static IntakeTables tables() {
    RuleTables tables = new RuleTables("import", null);
    IntakeTables read = IntakeTables.read(tables, List.of(Profile.STANDARD), REFRIGERANTS);
    tables.check();
    return read;
  }

  static CellRules rules() {
    return rules(Profile.STANDARD);
  }

  static CellRules rules(Profile profile) {
    return TABLES.rules(profile, TODAY);
  }

  static Heading heading(Kind kind, Profile profile, String... labels) {
    return HeadingReader.read(kind, Arrays.asList(labels), 1, TABLES.columns(kind), rules(profile));
  }

  /** Reads one row, its line being 2. */
  static RowReading.Understood row(
      Kind kind, Profile profile, List<String> labels, List<String> cells) {
    Heading heading = heading(kind, profile, labels.toArray(String[]::new));
    return new RowReading(kind, heading, rules(profile)).read(new Row(2, cells));
  }

  /** An import that nobody watches. */
  static Importing.Run run() {
    return new Importing.Run("i1", new Watch(java.time.Clock.systemUTC()));
  }
}
