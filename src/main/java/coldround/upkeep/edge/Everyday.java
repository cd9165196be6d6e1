package coldround.upkeep.edge;

import coldround.fleet.Today;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.LocalDate;

/** Works the whole fleet out anew at every start, since tables may have changed, and every day. */
@ApplicationScoped
class Everyday {

  private final Reassessment reassessment;
  private final Today today;
  private volatile LocalDate done;

  @Inject
  Everyday(Reassessment reassessment, Today today) {
    this.reassessment = reassessment;
    this.today = today;
  }

  void atStart(@Observes @Priority(3000) StartupEvent start) {
    everything();
  }

  @Scheduled(cron = "0 1/15 * * * ?", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void asDaysBegin() {
    if (!today.usually().equals(done)) {
      everything();
    }
  }

  private void everything() {
    LocalDate day = today.usually();
    reassessment.everything();
    done = day;
  }
}
