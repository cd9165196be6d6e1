package coldround.upkeep.edge;

import coldround.fleet.Today;
import coldround.http.KeptWith;
import coldround.scoring.FaultPriors;
import coldround.scoring.FaultTallies;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.scoring.statistics.FaultTally;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.Map;

/**
 * Puts priors of the fault rates in force that were estimated from the whole fleet. They stay as
 * they are between two estimates, so that every score, stored or asked for, is made with the same.
 */
@ApplicationScoped
class FleetPriors implements KeptWith {

  private final FaultTallies tallies;
  private final Scoring scoring;
  private final ScoringRules rules;
  private final Today today;
  private final TransactionSynchronizationRegistry transaction;

  /** Others are in force here than the store tells anybody yet. */
  private boolean ahead;

  @Inject
  FleetPriors(
      FaultTallies tallies,
      Scoring scoring,
      ScoringRules rules,
      Today today,
      TransactionSynchronizationRegistry transaction) {
    this.tallies = tallies;
    this.scoring = scoring;
    this.rules = rules;
    this.today = today;
    this.transaction = transaction;
  }

  @Override
  public Object held() {
    return scoring.priors();
  }

  /**
   * Goes on with those that were in force before the service stopped, or that another instance put
   * in force: not while the fleet is worked out here with newer ones, which nobody else sees yet.
   */
  synchronized void takeUp() {
    if (!ahead) {
      scoring.use(of(tallies.inForce()));
    }
  }

  /**
   * In a transaction, after which the fleet must be worked out anew; should it fail, the priors
   * stay as they were.
   *
   * @return true when the fleet gives other priors than those in force
   */
  synchronized boolean estimate() {
    Map<String, FaultTally> sums = tallies.sums(today.usually());
    if (sums.equals(tallies.inForce())) {
      return false;
    }
    transaction.registerInterposedSynchronization(end(scoring.priors()));
    ahead = true;
    tallies.putInForce(sums);
    scoring.use(of(sums));
    return true;
  }

  private FaultPriors of(Map<String, FaultTally> sums) {
    return rules.faultPriors().estimated(sums, rules.limits());
  }

  private Synchronization end(FaultPriors before) {
    return new Synchronization() {
      @Override
      public void beforeCompletion() {
        // nothing is left to do
      }

      @Override
      public void afterCompletion(int status) {
        synchronized (FleetPriors.this) {
          ahead = false;
          if (status != Status.STATUS_COMMITTED) {
            scoring.use(before);
          }
        }
      }
    };
  }
}
