package coldround.intake.edge;

import coldround.fleet.FleetWiping;
import coldround.fleet.Kind;
import coldround.http.Problem;
import coldround.http.Turns;
import coldround.intake.IntakeTables;
import coldround.intake.Receipt;
import io.quarkus.logging.Log;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Loads the lists of demo-data/ into an empty store, the way a person would upload them. */
@ApplicationScoped
class DemoFleet {

  private final FileImport imports;
  private final ImportRuns runs;
  private final IntakeTables tables;
  private final FleetWiping wiping;
  private final EntityManager entities;
  private final Turns turns;
  private final Clock clock;
  private final boolean wanted;
  private ImportRuns.Later last;

  @Inject
  DemoFleet(
      FileImport imports,
      ImportRuns runs,
      IntakeTables tables,
      FleetWiping wiping,
      EntityManager entities,
      Turns turns,
      Clock clock,
      @ConfigProperty(name = "coldround.demo", defaultValue = "false") boolean wanted) {
    this.imports = imports;
    this.runs = runs;
    this.tables = tables;
    this.wiping = wiping;
    this.entities = entities;
    this.turns = turns;
    this.clock = clock;
    this.wanted = wanted;
  }

  void atStart(@Observes @Priority(2000) StartupEvent start) {
    if (!wanted) {
      return;
    }
    if (!isEmpty()) {
      Log.info("the demo fleet is left out: the store is not empty");
      return;
    }
    for (Kind kind : Kind.values()) {
      load(kind);
    }
    remember();
  }

  private boolean isEmpty() {
    return wiping.size().equals(new FleetWiping.Size(0, 0, 0, 0));
  }

  private void load(Kind kind) {
    try (Spool file = list(kind)) {
      Receipt receipt = imports.run(file.file(), order(kind), imports.begin());
      Log.infof("demo fleet: %d %s", receipt.rows().read(), kind.code());
    }
  }

  private FileImport.Order order(Kind kind) {
    return new FileImport.Order(kind, tables.profile("standard").orElseThrow(), false, false, "");
  }

  private static Spool list(Kind kind) {
    String name = "demo-data/" + kind.code() + ".csv";
    ClassLoader loader = Thread.currentThread().getContextClassLoader();
    try (InputStream list = loader.getResourceAsStream(name)) {
      if (list == null) {
        throw new IllegalStateException("there is no packaged " + name);
      }
      return Spool.of(list, Long.MAX_VALUE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Loads it behind the files that wait.
   *
   * @return the import of its last list; that under way where it is being loaded already
   * @throws Problem 409 where the store holds anything
   */
  synchronized ImportRuns.Later loadLater() {
    if (last != null && !last.receipt().isDone()) {
      return last;
    }
    if (!isEmpty()) {
      throw Problem.conflict("The demo fleet is loaded only where there is no other fleet.");
    }
    List<ImportRuns.Later> lists = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      lists.add(runs.later(list(kind), order(kind)));
    }
    last = lists.get(lists.size() - 1);
    CompletableFuture.allOf(
            lists.stream().map(ImportRuns.Later::receipt).toArray(CompletableFuture[]::new))
        .thenRun(this::remember);
    return last;
  }

  private void remember() {
    FleetWiping.Size size = wiping.size();
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                entities
                    .createNativeQuery(
                        "insert into demo_fleet (id, loaded, customers, sites, units, technicians)"
                            + " values (1, :loaded, :customers, :sites, :units, :technicians)"
                            // another instance that has just started may have loaded it as well
                            + " on conflict do nothing")
                    .setParameter(
                        "loaded", LocalDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                    .setParameter("customers", size.customers())
                    .setParameter("sites", size.sites())
                    .setParameter("units", size.units())
                    .setParameter("technicians", size.technicians())
                    .executeUpdate());
  }

  /** Whether the demo fleet was loaded and is there still, alone or not. */
  boolean isThere() {
    return QuarkusTransaction.joiningExisting()
        .call(
            () ->
                (Long)
                        entities
                            .createNativeQuery("select count(*) from demo_fleet", Long.class)
                            .getSingleResult()
                    > 0);
  }

  /** True where there is neither the demo fleet nor another one. */
  synchronized boolean isGone() {
    return !isThere() && isEmpty();
  }

  /** Why it cannot be wiped; empty where it can. */
  String hindrance() {
    if (!isThere()) {
      return "The demo fleet is not loaded.";
    }
    if (!isAlone()) {
      return "There are customers, sites, units or technicians that the demo fleet did not bring."
          + " Wiping would take them too, so nothing is wiped.";
    }
    if (wiping.roundsTold() > 0) {
      return "Rounds are planned with the demo fleet. Delete those plans first, so that whoever"
          + " follows them is told.";
    }
    return "";
  }

  /** No row of these lists is ever deleted, so the same numbers mean the same rows. */
  private boolean isAlone() {
    FleetWiping.Size now = wiping.size();
    return QuarkusTransaction.joiningExisting()
        .call(
            () ->
                (Long)
                        entities
                            .createNativeQuery(
                                "select count(*) from demo_fleet where customers = :customers and"
                                    + " sites = :sites and units = :units and technicians ="
                                    + " :technicians",
                                Long.class)
                            .setParameter("customers", now.customers())
                            .setParameter("sites", now.sites())
                            .setParameter("units", now.units())
                            .setParameter("technicians", now.technicians())
                            .getSingleResult()
                    > 0);
  }

  /**
   * @throws Problem 409 where something else would go with it
   */
  synchronized void wipe() {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              // no file comes in between
              turns.await(Turns.IMPORTS);
              String hindrance = hindrance();
              if (!hindrance.isEmpty()) {
                throw Problem.conflict(hindrance);
              }
              wiping.wipe();
            });
  }
}
