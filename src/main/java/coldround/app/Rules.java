package coldround.app;

import coldround.field.VerdictTable;
import coldround.field.Verdicts;
import coldround.fleet.Plausibility;
import coldround.intake.IntakeTables;
import coldround.intake.KnownRefrigerants;
import coldround.intake.edge.ProfileFiles;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.RefrigerantLaw;
import coldround.refrigerant.RefrigerantRules;
import coldround.refrigerant.Refrigerants;
import coldround.replacement.Economics;
import coldround.rounds.RoundRules;
import coldround.scoring.NextReadings;
import coldround.scoring.RoofCheck;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.BadTables;
import coldround.table.Basis;
import coldround.table.RuleTables;
import coldround.table.TableProblem;
import coldround.upkeep.Upkeep;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The rule tables, read once: from the folders that COLDROUND_SCORING and COLDROUND_IMPORT name,
 * and where those have no file of the name, as packaged. All that is wrong with any of them stops
 * the start, told together.
 */
@Singleton
class Rules {

  private final RefrigerantRules refrigerants;
  private final ScoringRules scoring;
  private final Plausibility plausibility;
  private final Upkeep upkeep;
  private final VerdictTable verdicts;
  private final Economics economics;
  private final RoundRules rounds;
  private final IntakeTables intake;
  private final String fingerprint;

  @Inject
  Rules(
      @ConfigProperty(name = "coldround.scoring") Optional<Path> scoringFolder,
      @ConfigProperty(name = "coldround.import") Optional<Path> importFolder) {
    RuleTables judging = tables("scoring", scoringFolder);
    RuleTables reading = tables("import", importFolder);
    refrigerants = RefrigerantRules.load(judging);
    scoring = ScoringRules.load(judging);
    plausibility = Plausibility.load(judging, refrigerants.refrigerants());
    upkeep =
        Upkeep.load(
            judging,
            scoring,
            refrigerants.refrigerants(),
            refrigerants.leakInspections(),
            refrigerants.categories());
    verdicts = VerdictTable.load(judging);
    economics = Economics.load(judging, scoring, upkeep);
    rounds = RoundRules.load(judging);
    intake =
        IntakeTables.read(
            reading,
            ProfileFiles.read(reading, importFolder.orElse(null)),
            new Known(refrigerants.refrigerants()));
    check(judging, reading);
    fingerprint = judging.fingerprint();
  }

  private static RuleTables tables(String packaged, Optional<Path> folder) {
    RuleTables tables = new RuleTables(packaged, folder.orElse(null));
    if (folder.isPresent() && !Files.isDirectory(folder.get())) {
      tables.problem("", 0, "", folder.get() + " is not a folder");
    }
    return tables;
  }

  private static void check(RuleTables... all) {
    List<TableProblem> problems = new ArrayList<>();
    for (RuleTables tables : all) {
      problems.addAll(tables.problems());
    }
    if (!problems.isEmpty()) {
      throw new BadTables(problems);
    }
  }

  /** The refrigerants of the rule tables, for cells that name one. */
  private record Known(Refrigerants tables) implements KnownRefrigerants {
    @Override
    public Optional<String> designation(String written) {
      return tables.find(written).map(Refrigerant::designation);
    }

    @Override
    public Collection<String> designations() {
      return tables.all().stream().map(Refrigerant::designation).toList();
    }
  }

  @Produces
  @Singleton
  RefrigerantRules refrigerantRules() {
    return refrigerants;
  }

  @Produces
  @Singleton
  Refrigerants refrigerants() {
    return refrigerants.refrigerants();
  }

  @Produces
  @Singleton
  RefrigerantLaw law() {
    return refrigerants.law();
  }

  @Produces
  @Singleton
  ScoringRules scoringRules() {
    return scoring;
  }

  @Produces
  @Singleton
  Scoring scoring() {
    return new Scoring(scoring, refrigerants);
  }

  @Produces
  @Singleton
  NextReadings nextReadings(Scoring scorer) {
    return new NextReadings(scorer, scoring, refrigerants.refrigerants());
  }

  @Produces
  @Singleton
  RoofCheck roofCheck() {
    return new RoofCheck(scoring);
  }

  @Produces
  @Singleton
  Plausibility plausibility() {
    return plausibility;
  }

  @Produces
  @Singleton
  Upkeep upkeep() {
    return upkeep;
  }

  @Produces
  @Singleton
  Basis basis(@ConfigProperty(name = "quarkus.application.version") String version) {
    return new Basis(version + " " + fingerprint);
  }

  @Produces
  @Singleton
  Verdicts verdicts() {
    return new Verdicts(verdicts, scoring, refrigerants.refrigerants(), upkeep);
  }

  @Produces
  @Singleton
  Economics economics() {
    return economics;
  }

  @Produces
  @Singleton
  RoundRules rounds() {
    return rounds;
  }

  @Produces
  @Singleton
  IntakeTables intake() {
    return intake;
  }

  /** A bad table is told at the start, not at the first question. */
  void atStart(@Observes @Priority(1) StartupEvent start, IntakeTables tables) {
    tables.profileNames();
  }
}
