package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.http.Turns;
import coldround.table.Basis;
import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Works the whole fleet out anew where the stored results are of another day, of other tables or of
 * other priors than the fleet gives now.
 */
@ApplicationScoped
class Everyday {

  /** Longer than the work of a day on a big fleet takes on a slow machine. */
  private static final int LONGEST_SECONDS = 4 * 60 * 60;

  private final Reassessment reassessment;
  private final FleetPriors priors;
  private final StoredLevelling levelling;
  private final Fleet fleet;
  private final Today today;
  private final Basis basis;
  private final Turns turns;

  @Inject
  Everyday(
      Reassessment reassessment,
      FleetPriors priors,
      StoredLevelling levelling,
      Fleet fleet,
      Today today,
      Basis basis,
      Turns turns) {
    this.reassessment = reassessment;
    this.priors = priors;
    this.levelling = levelling;
    this.fleet = fleet;
    this.today = today;
    this.basis = basis;
    this.turns = turns;
  }

  @Transactional
  @TransactionConfiguration(timeout = LONGEST_SECONDS)
  void atStart(@Observes @Priority(3000) StartupEvent start) {
    turns.await(Turns.EVERYDAY);
    priors.takeUp();
    // else it is as the last hour left it
    if (refresh()) {
      levelling.level();
    }
  }

  // the day begins at another hour where a site lies in another zone
  @Scheduled(cron = "0 1 * * * ?", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  @Transactional
  @TransactionConfiguration(timeout = LONGEST_SECONDS)
  void everyHour() {
    turns.await(Turns.EVERYDAY);
    // another instance may have had the turn, and have put others in force
    priors.takeUp();
    refresh();
    levelling.level();
  }

  /** Other instances put priors in force too; a minute later this one scores with the same. */
  @Scheduled(every = "1m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  @Transactional
  void followOthers() {
    priors.takeUp();
  }

  /** True when the fleet had to be worked out anew. */
  private boolean refresh() {
    String now = fingerprint();
    BasisRow stored = BasisRow.findById(BasisRow.ONLY);
    boolean same = stored != null && stored.fingerprint.equals(now);
    if (!priors.estimate() && same) {
      return false;
    }
    reassessment.everything();
    BasisRow row = new BasisRow();
    row.id = BasisRow.ONLY;
    row.fingerprint = now;
    BasisRow.getEntityManager().merge(row);
    return true;
  }

  /** Of the tables and of the day that it is at the sites. */
  private String fingerprint() {
    String days =
        fleet.sites("").stream()
            .map(site -> site.timeZone() + " " + today.at(site))
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    byte[] text = (basis.text() + " on " + days).getBytes(StandardCharsets.UTF_8);
    return UUID.nameUUIDFromBytes(text).toString();
  }
}
