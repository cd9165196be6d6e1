package coldround.app;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/**
 * What the store tells of the work of the service, read every half minute: it is the same on each
 * instance and after a restart. docs/watching.md says what each figure means.
 */
@ApplicationScoped
class Watching {

  /**
   * @param waiting changes that have no place in the feed yet
   * @param lagSeconds how long the oldest of those has waited
   * @param behind most changes that an active subscriber has not been told
   * @param letters changes that could not be delivered
   * @param stopped subscriptions to which nothing is delivered any more
   * @param scoresLagDays how many days ago the oldest score was worked out
   */
  record Seen(
      long position,
      long waiting,
      double lagSeconds,
      long behind,
      long letters,
      long stopped,
      long scores,
      long scoresLagDays) {
    static final Seen NOTHING = new Seen(0, 0, 0, 0, 0, 0, 0, 0);
  }

  private final EntityManager entities;
  private final Clock clock;
  private final AtomicReference<Seen> seen = new AtomicReference<>(Seen.NOTHING);
  private final MultiGauge imports;
  private final MultiGauge rows;
  private final MultiGauge plans;

  @Inject
  Watching(EntityManager entities, Clock clock, MeterRegistry meters) {
    this.entities = entities;
    this.clock = clock;
    imports =
        MultiGauge.builder("coldround.imports")
            .description("Files that were taken")
            .register(meters);
    rows =
        MultiGauge.builder("coldround.import.rows")
            .description("Rows of files that were applied")
            .register(meters);
    plans =
        MultiGauge.builder("coldround.rounds.plans")
            .description("Plans of rounds")
            .register(meters);
    gauge(meters, "coldround.feed.position", "Changes told so far", Seen::position);
    gauge(meters, "coldround.feed.waiting", "Changes without a place yet", Seen::waiting);
    gauge(meters, "coldround.feed.lag.seconds", "Age of the oldest of those", Seen::lagSeconds);
    gauge(meters, "coldround.hooks.behind", "Changes the last subscriber is behind", Seen::behind);
    gauge(meters, "coldround.hooks.dead.letters", "Changes not delivered", Seen::letters);
    gauge(meters, "coldround.hooks.stopped", "Subscriptions that are stopped", Seen::stopped);
    gauge(meters, "coldround.scores", "Units with a score", Seen::scores);
    gauge(meters, "coldround.scores.lag.days", "Age of the oldest score", Seen::scoresLagDays);
  }

  private void gauge(
      MeterRegistry meters,
      String name,
      String says,
      java.util.function.ToDoubleFunction<Seen> figure) {
    io.micrometer.core.instrument.Gauge.builder(name, () -> figure.applyAsDouble(seen.get()))
        .description(says)
        .register(meters);
  }

  Seen seen() {
    return seen.get();
  }

  @Scheduled(every = "30s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  @Transactional
  void look() {
    seen.set(now());
    List<Row<?>> files = new ArrayList<>();
    List<Row<?>> taken = new ArrayList<>();
    for (Object[] each :
        entities
            .createQuery(
                "select kind, preview, applied, count(*), sum(created), sum(changed),"
                    + " sum(unchanged), sum(rejected) from ReceiptRow"
                    + " group by kind, preview, applied",
                Object[].class)
            .getResultList()) {
      String outcome = (boolean) each[1] ? "preview" : (boolean) each[2] ? "applied" : "refused";
      files.add(Row.of(Tags.of("kind", (String) each[0], "outcome", outcome), number(each[3])));
      if (outcome.equals("applied")) {
        List<String> results = List.of("created", "changed", "unchanged", "rejected");
        for (int i = 0; i < results.size(); i++) {
          Tags tags = Tags.of("kind", (String) each[0], "result", results.get(i));
          taken.add(Row.of(tags, number(each[4 + i])));
        }
      }
    }
    imports.register(files, true);
    rows.register(taken, true);
    plans.register(states(), true);
  }

  private List<Row<?>> states() {
    List<Row<?>> states = new ArrayList<>();
    for (Object[] each :
        entities
            .createQuery("select state, count(*) from RoundPlanRow group by state", Object[].class)
            .getResultList()) {
      states.add(Row.of(Tags.of("state", String.valueOf(each[0])), number(each[1])));
    }
    return states;
  }

  private Seen now() {
    Instant oldest = one("select min(happened) from FeedEventRow where position is null");
    LocalDate scored = one("select min(asOf) from AssessmentRow");
    return new Seen(
        number(one("select max(position) from FeedHeadRow")),
        number(one("select count(*) from FeedEventRow where position is null")),
        oldest == null
            ? 0
            : Math.max(0, Duration.between(oldest, clock.instant()).toMillis() / 1e3),
        // counted: behind a restored backup places are left out
        number(
            one(
                "select count(*) from FeedEventRow where position > (select min(position) from"
                    + " SubscriptionRow where state = 'active')")),
        number(one("select count(*) from DeadLetterRow")),
        number(one("select count(*) from SubscriptionRow where state <> 'active'")),
        number(one("select count(*) from AssessmentRow")),
        scored == null ? 0 : Math.max(0, LocalDate.now(clock).toEpochDay() - scored.toEpochDay()));
  }

  @SuppressWarnings("unchecked")
  private <T> T one(String query) {
    return (T) entities.createQuery(query).getSingleResult();
  }

  private static long number(Object value) {
    return value == null ? 0 : ((Number) value).longValue();
  }
}
