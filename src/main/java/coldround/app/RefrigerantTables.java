package coldround.app;

import coldround.refrigerant.RefrigerantLaw;
import coldround.refrigerant.RefrigerantRules;
import coldround.refrigerant.Refrigerants;
import coldround.table.RuleTables;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refrigerants and the law about them: scoring/, or the folder named by COLDROUND_SCORING. */
class RefrigerantTables {

  @Produces
  @Singleton
  RefrigerantRules rules(@ConfigProperty(name = "coldround.scoring") Optional<Path> folder) {
    RuleTables tables = new RuleTables("scoring", folder.orElse(null));
    RefrigerantRules rules = RefrigerantRules.load(tables);
    tables.check();
    return rules;
  }

  @Produces
  @Singleton
  Refrigerants refrigerants(RefrigerantRules rules) {
    return rules.refrigerants();
  }

  @Produces
  @Singleton
  RefrigerantLaw law(RefrigerantRules rules) {
    return rules.law();
  }

  /** A bad table is told at the start, not at the first question. */
  void read(@Observes StartupEvent start, RefrigerantRules rules) {}
}
