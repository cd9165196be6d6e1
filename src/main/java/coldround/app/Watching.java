package coldround.app;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import io.quarkus.logging.Log;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/**
 * What the store tells of the work of the service, read every half minute, the scores once they are
 * of today every ten minutes: it is the same on each instance and after a restart. docs/watching.md
 * says what each figure means.
 */
@ApplicationScoped
class Watching {

  /** Statements that take longer are ended: figures are worth less than the calls they delay. */
  private static final int LONGEST_SECONDS = 10;

  private static final Duration SCORES_STAND = Duration.ofMinutes(10);

  /**
   * @param waiting changes that have no place in the feed yet
   * @param lagSeconds how long the oldest of those has waited
   */
  record Feed(long position, long waiting, double lagSeconds) {}

  /**
   * @param behind most changes that an active subscriber has not been told
   * @param letters changes that could not be delivered
   * @param stopped subscriptions to which nothing is delivered any more
   */
  record Hooks(long behind, long letters, long stopped) {}

  /**
   * @param lagDays how many days ago the oldest score was worked out
   */
  record Scores(long units, long lagDays) {}

  private final EntityManager entities;
  private final Clock clock;
  private final AtomicReference<Feed> feed = new AtomicReference<>(new Feed(0, 0, 0));
  private final AtomicReference<Hooks> hooks = new AtomicReference<>(new Hooks(0, 0, 0));
  private final AtomicReference<Scores> scores = new AtomicReference<>(new Scores(0, 0));
  private volatile Instant scoresRead = Instant.EPOCH;
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
    gauge(meters, "feed.position", "Changes told so far", feed, Feed::position);
    gauge(meters, "feed.waiting", "Changes without a place yet", feed, Feed::waiting);
    gauge(meters, "feed.lag.seconds", "Age of the oldest of those", feed, Feed::lagSeconds);
    gauge(meters, "hooks.behind", "Changes the last subscriber is behind", hooks, Hooks::behind);
    gauge(meters, "hooks.dead.letters", "Changes not delivered", hooks, Hooks::letters);
    gauge(meters, "hooks.stopped", "Subscriptions that are stopped", hooks, Hooks::stopped);
    gauge(meters, "scores", "Units with a score", scores, Scores::units);
    gauge(meters, "scores.lag.days", "Age of the oldest score", scores, Scores::lagDays);
  }

  private static <T> void gauge(
      MeterRegistry meters,
      String name,
      String says,
      AtomicReference<T> seen,
      ToDoubleFunction<T> figure) {
    Gauge.builder("coldround." + name, () -> figure.applyAsDouble(seen.get()))
        .description(says)
        .register(meters);
  }

  Feed feed() {
    return feed.get();
  }

  Hooks hooks() {
    return hooks.get();
  }

  Scores scores() {
    return scores.get();
  }

  @Scheduled(
      every = "30s",
      delayed = "5s",
      concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    look("the feed", this::readFeed, feed::set);
    look("the web hooks", this::readHooks, hooks::set);
    look("the imports", this::readFiles, this::tell);
    look("the plans of rounds", this::readPlans, plans -> this.plans.register(plans, true));
    if (scoresAreDue()) {
      look("the scores", this::readScores, scores::set);
    }
  }

  /** They are a walk over all units: seldom, once all of them are of today. */
  private boolean scoresAreDue() {
    Scores last = scores.get();
    return last.units() == 0
        || last.lagDays() > 0
        || clock.instant().isAfter(scoresRead.plus(SCORES_STAND));
  }

  /** Each by itself: where one takes too long in a crowd, the others are told all the same. */
  private static <T> void look(String at, Callable<T> reading, Consumer<T> telling) {
    try {
      telling.accept(QuarkusTransaction.requiringNew().timeout(2 * LONGEST_SECONDS).call(reading));
    } catch (RuntimeException e) {
      Log.warnf(e, "figures of %s stay as they were, they could not be read", at);
    }
  }

  private Feed readFeed() {
    Instant oldest = one("select min(happened) from FeedEventRow where position is null");
    return new Feed(
        number(one("select max(position) from FeedHeadRow")),
        number(one("select sum(changes) from FeedEventRow where position is null")),
        oldest == null
            ? 0
            : Math.max(0, Duration.between(oldest, clock.instant()).toMillis() / 1e3));
  }

  private Hooks readHooks() {
    return new Hooks(
        // counted: behind a restored backup places are left out
        number(
            one(
                "select sum(least(f.changes, f.position - s.position)) from FeedEventRow f,"
                    + " (select min(position) as position from SubscriptionRow"
                    + " where state = 'active') s where f.position > s.position")),
        number(one("select count(*) from DeadLetterRow")),
        number(one("select count(*) from SubscriptionRow where state <> 'active'")));
  }

  private Scores readScores() {
    scoresRead = clock.instant();
    LocalDate oldest = one("select min(asOf) from AssessmentRow");
    return new Scores(
        number(one("select count(*) from AssessmentRow")),
        oldest == null ? 0 : Math.max(0, LocalDate.now(clock).toEpochDay() - oldest.toEpochDay()));
  }

  private List<Object[]> readFiles() {
    return query(
            "select kind, preview, applied, count(*), sum(created), sum(changed), sum(unchanged),"
                + " sum(rejected) from ReceiptRow group by kind, preview, applied",
            Object[].class)
        .getResultList();
  }

  private void tell(List<Object[]> counted) {
    List<Row<?>> files = new ArrayList<>();
    List<Row<?>> taken = new ArrayList<>();
    for (Object[] each : counted) {
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
  }

  private List<Row<?>> readPlans() {
    List<Row<?>> states = new ArrayList<>();
    for (Object[] each :
        query("select state, count(*) from RoundPlanRow group by state", Object[].class)
            .getResultList()) {
      states.add(Row.of(Tags.of("state", String.valueOf(each[0])), number(each[1])));
    }
    return states;
  }

  @SuppressWarnings("unchecked")
  private <T> T one(String query) {
    return (T) query(query, Object.class).getSingleResult();
  }

  private <T> TypedQuery<T> query(String query, Class<T> shape) {
    return entities
        .createQuery(query, shape)
        .setHint("jakarta.persistence.query.timeout", LONGEST_SECONDS * 1000);
  }

  private static long number(Object value) {
    return value == null ? 0 : ((Number) value).longValue();
  }
}
