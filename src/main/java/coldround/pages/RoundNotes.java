package coldround.pages;

import coldround.fleet.FleetNames;
import coldround.rounds.Job;
import coldround.rounds.Note;
import coldround.rounds.RoundPlan;
import java.time.LocalDate;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What to know of a plan, about things as people call them. Programs are told of the same by codes:
 * "site LMC/S4", "technician T1 on 2026-05-04", "task …", "call … at LMC/S4".
 */
final class RoundNotes {

  private static final Pattern SUBJECT =
      Pattern.compile("(site|technician|task|call \\S+ at) (.+?)( on (\\d{4}-\\d\\d-\\d\\d))?");

  private final FleetNames names;
  private final Map<String, Job> missed;

  RoundNotes(RoundPlan plan, FleetNames names) {
    this.names = names;
    this.missed =
        plan.leftOut().stream()
            .flatMap(left -> left.call().jobs().stream())
            .collect(Collectors.toMap(Job::task, job -> job, (one, same) -> one));
  }

  /** The subject as a reader knows it. */
  Note told(Note note) {
    Matcher about = SUBJECT.matcher(note.subject());
    if (!about.matches()) {
      return new Note(note.code(), Told.sentence(note.subject()), note.message());
    }
    String subject = named(about.group(1), about.group(2));
    String day = about.group(4);
    String on = day == null ? "" : " on " + RoundWords.day(LocalDate.parse(day));
    return new Note(note.code(), subject + on, note.message());
  }

  private String named(String what, String code) {
    return switch (what) {
      case "technician" -> coded(names.technician(code), code);
      case "task" -> missed.containsKey(code) ? work(missed.get(code)) : "Task " + code;
      default -> coded(names.place(code), code);
    };
  }

  private String work(Job job) {
    return Words.title(job.kind()) + " of " + job.tag() + " at " + names.place(job.site());
  }

  private static String coded(String name, String code) {
    return name.equals(code) ? name : name + " (" + code + ")";
  }
}
