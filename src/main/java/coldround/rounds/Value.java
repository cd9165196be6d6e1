package coldround.rounds;

import java.time.LocalDate;
import java.util.function.ToDoubleFunction;

/** What it costs to let work wait. */
final class Value {

  private final RoundRules rules;
  private final Prices prices;
  private final LocalDate from;
  private final LocalDate nextChance;
  private final ToDoubleFunction<Call> way;

  /**
   * @param way what going to a call and back costs if there is nothing else to do there
   */
  Value(
      RoundRules rules,
      Prices prices,
      LocalDate from,
      LocalDate nextChance,
      ToDoubleFunction<Call> way) {
    this.rules = rules;
    this.prices = prices;
    this.from = from;
    this.nextChance = nextChance;
    this.way = way;
  }

  LocalDate nextChance() {
    return nextChance;
  }

  /** What doing it on that day rather than on the first one is expected to cost. */
  double waitingUntil(Call call, LocalDate day) {
    double cost = 0;
    for (Job job : call.jobs()) {
      cost += job.savesPerDay() * job.daysLate(from, day);
      cost += rules.amount(Figure.LATE_BY_LAW) * job.daysUnlawful(from, day);
    }
    return cost;
  }

  /** Leaving it out: the same work at the next chance, the way there again, and the waiting. */
  double leavingOut(Call call) {
    return call.minutes() * prices.labourPerMinute()
        + comingBack(call)
        + waitingUntil(call, nextChance);
  }

  /**
   * Work that is not due by then does not ask for a way of its own. Work whose window ends before
   * then needs the whole way whatever happens, so leaving it out saves nothing of it.
   */
  double comingBack(Call call) {
    if (!call.due().isBefore(nextChance)) {
      return 0;
    }
    boolean ends = call.jobs().stream().anyMatch(job -> job.latest().isBefore(nextChance));
    return way.applyAsDouble(call) * (ends ? 1 : rules.amount(Figure.RETURN_SHARE));
  }
}
