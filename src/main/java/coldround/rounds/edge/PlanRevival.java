package coldround.rounds.edge;

import coldround.fleet.Today;
import io.quarkus.logging.Log;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;

/**
 * Takes up plans whose service ended while it worked on them: the caller was promised a plan, and
 * whichever instance sees it first makes it.
 */
@ApplicationScoped
class PlanRevival {

  private final Planner planner;
  private final StoredRounds store;
  private final Changing changing;
  private final Today today;

  @Inject
  PlanRevival(Planner planner, StoredRounds store, Changing changing, Today today) {
    this.planner = planner;
    this.store = store;
    this.changing = changing;
    this.today = today;
  }

  @Scheduled(every = "5s", delayed = "5s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    for (String id : store.left(today.usually())) {
      // one at a time: other instances may be idle too
      if (!planner.isIdle()) {
        return;
      }
      store
          .claim(id)
          .ifPresent(
              hold -> {
                Log.infof("plan %s is taken up again: its service ended", id);
                changing.goOn(hold);
              });
    }
  }
}
