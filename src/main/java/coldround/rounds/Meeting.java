package coldround.rounds;

import coldround.quantity.Quantity;
import coldround.rounds.RoundPlan.Round;
import coldround.rounds.search.Plan;
import coldround.rounds.search.engine.Together.Apart;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Says why several technicians come to one site on one day, where they do. */
final class Meeting {

  private static final String CODE = "several-technicians";

  private final Draft draft;

  Meeting(Draft draft) {
    this.draft = draft;
  }

  List<Note> notes(Plan plan) {
    List<Note> notes = new ArrayList<>();
    for (Apart apart : draft.gathering().apart(plan)) {
      LocalDate day = draft.day(apart.vehicles().get(0)).day();
      String site = draft.call(apart.stops().get(0)).site();
      notes.add(new Note(CODE, subject(site, day), message(apart)));
    }
    return notes;
  }

  private static String subject(String site, LocalDate day) {
    return "site " + site + " on " + day;
  }

  /**
   * The notes of a plan after a stop was moved by hand: those of meetings that are still as they
   * were, and new ones of meetings that the move brought about.
   */
  static List<Note> afterMove(List<Note> before, List<Round> rounds) {
    Map<String, List<String>> meetings = new LinkedHashMap<>();
    for (Round round : rounds) {
      for (RoundPlan.Stop stop : round.stops()) {
        List<String> names =
            meetings.computeIfAbsent(
                subject(stop.call().site(), round.day()), key -> new ArrayList<>());
        if (!names.contains(round.name())) {
          names.add(round.name());
        }
      }
    }
    meetings.values().removeIf(names -> names.size() < 2);
    List<Note> notes = new ArrayList<>();
    for (Note note : before) {
      boolean stays =
          !note.code().equals(CODE)
              || meetings.getOrDefault(note.subject(), List.of()).stream()
                      .filter(note.message()::contains)
                      .count()
                  > 1;
      if (stays) {
        notes.add(note);
        meetings.remove(note.subject());
      }
    }
    meetings.forEach((subject, names) -> notes.add(new Note(CODE, subject, byHand(names))));
    return notes;
  }

  private static String byHand(List<String> names) {
    return "is visited by " + String.join(" and ", names) + ": a stop was moved by hand.";
  }

  /** Whether a note is of this kind and of that day. */
  static boolean of(Note note, LocalDate day) {
    return note.code().equals(CODE) && note.subject().endsWith(" on " + day);
  }

  private String message(Apart apart) {
    String who =
        String.join(
            " and ", apart.vehicles().stream().map(v -> draft.day(v).worker().name()).toList());
    return "is visited by " + who + ": " + why(apart) + otherDay(apart) + ".";
  }

  private String why(Apart apart) {
    return switch (apart.cause()) {
      case BOUND -> "what is booked, begun or under way there stays with who has it";
      case SKILLS -> "nobody who works that day has all of " + skills(apart);
      case ROOM ->
          "nobody who could do all of it has room that day for its "
              + minutes(apart)
              + " minutes beside what else is planned, within working and visiting hours";
      case PRICE ->
          "one of them for all would cost "
              + money(apart.extra())
              + " more, and one visit less is worth "
              + money(draft.apart() * (apart.vehicles().size() - 1));
      case LEFT_SO ->
          "an emergency was put in where it changed least; one of them for all would cost "
              + money(apart.extra())
              + " more when planned anew";
    };
  }

  /** Of a plan of one day, as when an emergency is put in, there is nothing to say. */
  private String otherDay(Apart apart) {
    if (draft.order().from().equals(draft.order().to())) {
      return "";
    }
    return apart.otherDay() == Double.POSITIVE_INFINITY
        ? "; no other day of the plan can take the part of one of them"
        : "; the part of one of them on another day would cost "
            + money(apart.otherDay())
            + " more";
  }

  private String skills(Apart apart) {
    Set<String> skills = new HashSet<>();
    apart.stops().forEach(stop -> skills.addAll(draft.call(stop).skills()));
    return Shifts.told(skills);
  }

  private int minutes(Apart apart) {
    return apart.stops().stream().mapToInt(stop -> draft.call(stop).minutes()).sum();
  }

  private String money(double amount) {
    return new Quantity(amount, draft.currency()).toString();
  }
}
