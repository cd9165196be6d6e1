package coldround.app;

import coldround.fleet.Plausibility;
import coldround.intake.IntakeTables;
import coldround.intake.KnownRefrigerants;
import coldround.intake.edge.ProfileFiles;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.RefrigerantLaw;
import coldround.refrigerant.RefrigerantRules;
import coldround.refrigerant.Refrigerants;
import coldround.scoring.LeakMethods;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.BadTables;
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
  private final LeakMethods leakMethods;
  private final Plausibility plausibility;
  private final Upkeep upkeep;
  private final IntakeTables intake;

  @Inject
  Rules(
      @ConfigProperty(name = "coldround.scoring") Optional<Path> scoringFolder,
      @ConfigProperty(name = "coldround.import") Optional<Path> importFolder) {
    RuleTables judging = tables("scoring", scoringFolder);
    RuleTables reading = tables("import", importFolder);
    refrigerants = RefrigerantRules.load(judging);
    scoring = ScoringRules.load(judging);
    leakMethods = LeakMethods.load(judging);
    plausibility = Plausibility.load(judging, refrigerants.refrigerants());
    upkeep =
        Upkeep.load(
            judging,
            scoring,
            refrigerants.refrigerants(),
            refrigerants.leakInspections(),
            refrigerants.categories());
    intake =
        IntakeTables.read(
            reading,
            ProfileFiles.read(reading, importFolder.orElse(null)),
            new Known(refrigerants.refrigerants()));
    check(judging, reading);
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
    return new Scoring(
        scoring,
        new coldround.scoring.RefrigerantRules(
            refrigerants.refrigerants(),
            refrigerants.law(),
            refrigerants.categories(),
            refrigerants.leakRates(),
            refrigerants.leakDuties(),
            leakMethods));
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
  IntakeTables intake() {
    return intake;
  }

  /** A bad table is told at the start, not at the first question. */
  void atStart(@Observes @Priority(1) StartupEvent start, IntakeTables tables) {
    tables.profileNames();
  }
}
