package coldround.app;

import coldround.intake.IntakeTables;
import coldround.intake.KnownRefrigerants;
import coldround.intake.Profile;
import coldround.intake.edge.ProfileFiles;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.table.RuleTables;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** How files are read: the tables of import/, or of the folder named by COLDROUND_IMPORT. */
class IntakeRules {

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
  IntakeTables intakeTables(
      @ConfigProperty(name = "coldround.import") Optional<Path> folder,
      @ConfigProperty(name = "coldround.scoring") Optional<Path> scoringFolder) {
    RuleTables scoring = new RuleTables("scoring", scoringFolder.orElse(null));
    Refrigerants refrigerants = Refrigerants.load(scoring);
    scoring.check();
    RuleTables tables = new RuleTables("import", folder.orElse(null));
    List<Profile> profiles = ProfileFiles.read(tables, folder.orElse(null));
    IntakeTables read = IntakeTables.read(tables, profiles, new Known(refrigerants));
    tables.check();
    return read;
  }

  /** A bad table is told at the start, not at the first file. */
  void read(@Observes StartupEvent start, IntakeTables tables) {}
}
