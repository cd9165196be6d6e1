package coldround.intake;

import coldround.fleet.Kind;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** All that is known of how files are read: columns, codes, profiles. */
public final class IntakeTables {

  private final Columns columns;
  private final Codes codes;
  private final Map<String, Profile> profiles = new TreeMap<>();
  private final KnownRefrigerants refrigerants;

  private IntakeTables(Columns columns, Codes codes, KnownRefrigerants refrigerants) {
    this.columns = columns;
    this.codes = codes;
    this.refrigerants = refrigerants;
  }

  /**
   * Reads the tables of the folder import/; what is wrong with them becomes problems of the tables.
   *
   * @param profiles as read from import/profiles
   */
  public static IntakeTables read(
      RuleTables tables, Collection<Profile> profiles, KnownRefrigerants refrigerants) {
    Codes codes = Codes.read(tables);
    IntakeTables read =
        new IntakeTables(Columns.read(tables, codes, refrigerants), codes, refrigerants);
    profiles.forEach(profile -> read.add(profile, tables));
    return read;
  }

  private void add(Profile profile, RuleTables tables) {
    String file = "profiles/" + profile.name() + ".yaml";
    profile.faults(columns, codes).forEach(fault -> tables.problem(file, 0, "", fault));
    profiles.put(profile.name(), profile);
  }

  public Optional<Profile> profile(String name) {
    return Optional.ofNullable(profiles.get(name));
  }

  public Set<String> profileNames() {
    return profiles.keySet();
  }

  public Columns columns() {
    return columns;
  }

  public Codes codes() {
    return codes;
  }

  public List<Column> columns(Kind kind) {
    return columns.of(kind);
  }

  /** What reading a file of that profile depends on. */
  public CellRules rules(Profile profile, LocalDate today) {
    return new CellRules(codes, profile, refrigerants, columns.readings(), today);
  }
}
