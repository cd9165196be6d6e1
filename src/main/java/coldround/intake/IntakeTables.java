package coldround.intake;

import coldround.fleet.Kind;
import coldround.sheet.NotASheet;
import coldround.sheet.Sheet;
import coldround.table.RuleTables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
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
  private final GuessLimits guessing;

  private IntakeTables(
      Columns columns, Codes codes, KnownRefrigerants refrigerants, GuessLimits guessing) {
    this.guessing = guessing;
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
        new IntakeTables(
            Columns.read(tables, codes, refrigerants),
            codes,
            refrigerants,
            GuessLimits.read(tables));
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

  /** All that are packaged or in the operator's folder. */
  public Collection<Profile> profiles() {
    return List.copyOf(profiles.values());
  }

  /**
   * Guesses a profile from a file.
   *
   * @throws UnreadableFile when it is no table
   */
  public Proposal propose(Path file, String sheetName, Kind kind, LocalDate today)
      throws IOException {
    try (Sheet sheet = Sheet.open(Files.newInputStream(file), sheetName)) {
      List<List<String>> sample = new ArrayList<>();
      while (sample.size() < guessing.sampleRows() && sheet.rows().hasNext()) {
        sample.add(sheet.rows().next().cells());
      }
      List<String> headers = sheet.layout().labels();
      return new Guessing(kind, headers, sample, this, guessing, today).propose();
    } catch (NotASheet refusal) {
      throw UnreadableFile.of(refusal);
    }
  }

  /** What does not fit the columns and codes a profile speaks of; empty for a good one. */
  public List<String> faults(Profile profile) {
    return profile.faults(columns, codes);
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
    return new CellRules(
        codes, profile, refrigerants, columns.readings(), today, column -> DateEvidence.NONE);
  }
}
