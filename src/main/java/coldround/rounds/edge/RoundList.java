package coldround.rounds.edge;

import coldround.quantity.MeasureSystem;
import coldround.rounds.Job;
import coldround.rounds.RoundPlan;
import coldround.sheet.SheetWriter;
import java.io.StringWriter;
import java.util.List;

/** A plan as a spreadsheet: one row a task, in the order it is done, then what is left out. */
final class RoundList {

  private static final List<String> HEADER =
      List.of(
          "day",
          "technician",
          "stop",
          "customer",
          "site",
          "name",
          "address",
          "arrives",
          "begins",
          "leaves",
          "travel [min]",
          "distance [km]",
          "travel_estimated",
          "unit",
          "task",
          "task_id",
          "minutes",
          "due",
          "reason",
          "why");

  private RoundList() {}

  static String csv(RoundPlan plan) {
    StringWriter text = new StringWriter();
    try (SheetWriter out = SheetWriter.guarded(text)) {
      out.write(HEADER);
      for (RoundPlan.Round round : plan.rounds()) {
        for (int i = 0; i < round.stops().size(); i++) {
          for (Job job : round.stops().get(i).call().jobs()) {
            out.write(row(round, i, job));
          }
        }
      }
      for (RoundPlan.Missed missed : plan.leftOut()) {
        missed.call().jobs().forEach(job -> out.write(leftOut(missed, job)));
      }
    }
    return text.toString();
  }

  private static List<String> row(RoundPlan.Round round, int index, Job job) {
    RoundPlan.Stop stop = round.stops().get(index);
    return List.of(
        round.day().toString(),
        round.technician(),
        String.valueOf(index + 1),
        RoundView.customer(job.site()),
        RoundView.site(job.site()),
        stop.premises().name(),
        stop.premises().address(),
        RoundView.time(stop.arrives(), round.zone()).toString(),
        RoundView.time(stop.begins(), round.zone()).toString(),
        RoundView.time(stop.leaves(), round.zone()).toString(),
        RoundView.number(stop.leg().minutes(), 1).toPlainString(),
        RoundView.number(stop.leg().km(), 1).toPlainString(),
        stop.leg().estimated() ? "yes" : "no",
        job.tag(),
        job.kind(),
        job.task(),
        String.valueOf(job.minutes()),
        job.due().toString(),
        reason(job),
        stop.why().text(MeasureSystem.US));
  }

  private static List<String> leftOut(RoundPlan.Missed missed, Job job) {
    return List.of(
        "",
        "",
        "",
        RoundView.customer(job.site()),
        RoundView.site(job.site()),
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        job.tag(),
        job.kind(),
        job.task(),
        String.valueOf(job.minutes()),
        job.due().toString(),
        reason(job),
        "left out: " + missed.why().text(MeasureSystem.US));
  }

  private static String reason(Job job) {
    return job.reasons().isEmpty() ? "" : job.reasons().get(0).text(MeasureSystem.US);
  }
}
