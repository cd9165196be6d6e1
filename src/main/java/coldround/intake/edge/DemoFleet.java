package coldround.intake.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Kind;
import coldround.intake.IntakeTables;
import coldround.intake.Receipt;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Loads the lists of demo-data/ into an empty store, the way a person would upload them. */
@ApplicationScoped
class DemoFleet {

  private final FileImport imports;
  private final IntakeTables tables;
  private final Fleet fleet;
  private final boolean wanted;

  @Inject
  DemoFleet(
      FileImport imports,
      IntakeTables tables,
      Fleet fleet,
      @ConfigProperty(name = "coldround.demo", defaultValue = "false") boolean wanted) {
    this.imports = imports;
    this.tables = tables;
    this.fleet = fleet;
    this.wanted = wanted;
  }

  void atStart(@Observes @Priority(2000) StartupEvent start) {
    if (!wanted) {
      return;
    }
    if (!fleet.customers().isEmpty()) {
      Log.info("the demo fleet is left out: the store is not empty");
      return;
    }
    for (Kind kind : Kind.values()) {
      load(kind);
    }
  }

  private void load(Kind kind) {
    FileImport.Order order =
        new FileImport.Order(kind, tables.profile("standard").orElseThrow(), false, false, "");
    try (InputStream list = list(kind);
        Spool file = Spool.of(list, Long.MAX_VALUE)) {
      Receipt receipt = imports.run(file.file(), order, imports.begin());
      Log.infof("demo fleet: %d %s", receipt.rows().read(), kind.code());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static InputStream list(Kind kind) throws IOException {
    String name = "demo-data/" + kind.code() + ".csv";
    InputStream list = Thread.currentThread().getContextClassLoader().getResourceAsStream(name);
    if (list == null) {
      throw new IOException("there is no packaged " + name);
    }
    return list;
  }
}
