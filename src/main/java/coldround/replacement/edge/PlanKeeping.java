package coldround.replacement.edge;

import coldround.http.Answers;
import coldround.quantity.MeasureSystem;
import coldround.replacement.Economics;
import coldround.replacement.ReplacementPlan;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;

/** Keeps a plan in its three shapes, as it was made. */
@ApplicationScoped
class PlanKeeping {

  /**
   * @param answer JSON
   */
  record Kept(String id, byte[] answer) {}

  private final PlanMaking making;
  private final StoredPlans plans;
  private final Economics economics;
  private final Answers answers;
  private final Clock clock;

  @Inject
  PlanKeeping(
      PlanMaking making, StoredPlans plans, Economics economics, Answers answers, Clock clock) {
    this.making = making;
    this.plans = plans;
    this.economics = economics;
    this.answers = answers;
    this.clock = clock;
  }

  /**
   * @param customers whom it was asked for
   */
  Kept keep(ReplacementPlan plan, List<String> customers, MeasureSystem system) {
    String id = UUID.randomUUID().toString();
    Instant made = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    PlanView view = PlanView.of(id, made, plan, economics, system);
    byte[] answer = answers.bytes(view);
    String report = PlanReport.html(plan, economics, making.names(), view.cautions(), system);
    byte[] sheet = PlanSheet.of(plan, economics.costs().currency().code());
    List<String> all = customers.stream().distinct().toList();
    plans.add(
        id,
        made,
        all.size() == 1 ? all.get(0) : "",
        new StoredPlans.Stored(answer, sheet, report.getBytes(StandardCharsets.UTF_8)));
    return new Kept(id, answer);
  }
}
