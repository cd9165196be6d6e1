package coldround.rounds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The work of an order as calls; work that cannot be planned is named with its reason. */
final class TakenCalls {

  private final Order order;
  private final RoundRules rules;
  private final SiteBook sites;
  private final Told told;
  private final List<Note> notes;
  private final List<RoundPlan.Missed> missed;

  /**
   * @param notes to which what is to be known is added
   * @param missed to which work that cannot be planned is added
   */
  TakenCalls(
      Order order,
      RoundRules rules,
      SiteBook sites,
      Told told,
      List<Note> notes,
      List<RoundPlan.Missed> missed) {
    this.order = order;
    this.rules = rules;
    this.sites = sites;
    this.told = told;
    this.notes = notes;
    this.missed = missed;
  }

  /**
   * In the order in which the search knows them.
   *
   * @param nextChance day on which what is left out could be done instead
   */
  List<Call> of(LocalDate nextChance) {
    List<Call> calls = new ArrayList<>();
    Map<String, Double> longest = new HashMap<>();
    List<Job> jobs = new ArrayList<>();
    Set<String> named = new HashSet<>();
    for (Job job : order.jobs()) {
      Note fault = sites.fault(job.site());
      if (fault == null) {
        double open = longest.computeIfAbsent(job.site(), sites::longestMinutes);
        fault = tooLong(job, open);
      }
      if (fault == null) {
        jobs.add(job);
      } else {
        refuse(job, fault, named);
      }
    }
    longest.replaceAll((site, open) -> Math.min(open, rules.minutes(Figure.CALL_MOST)));
    for (Call call : order.calls()) {
      if (sites.fault(call.site()) == null) {
        calls.add(call);
      } else {
        call.jobs().forEach(job -> refuse(job, sites.fault(job.site()), named));
      }
    }
    calls.addAll(new Grouping(order, nextChance, longest).calls(jobs));
    if (calls.isEmpty()) {
      notes.add(new Note("no-task", "plan", "there is no task to plan in these days."));
    }
    return calls;
  }

  private static Note tooLong(Job job, double open) {
    if (open == 0) {
      String message = "is not open on any day of the plan.";
      return new Note("closed", "site " + job.site(), message);
    }
    String message =
        "takes %d minutes, longer than the site is open on any day (%d minutes)."
            .formatted(job.minutes(), Math.round(open));
    return job.minutes() > open ? new Note("too-long", "task " + job.task(), message) : null;
  }

  private void refuse(Job job, Note fault, Set<String> named) {
    if (named.add(fault.subject())) {
      notes.add(fault);
    }
    Call alone = new Call("c" + job.task(), job.site(), List.of(job), null, null, false, null);
    String why = fault.subject() + " " + fault.message();
    missed.add(new RoundPlan.Missed(alone, told.unusable(fault.code(), why)));
  }
}
