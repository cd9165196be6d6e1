package coldround.pages;

import coldround.intake.Codes;
import coldround.pages.VisitSheet.Field;
import coldround.pages.VisitSheet.Graded;
import coldround.pages.VisitSheet.Pick;
import coldround.pages.VisitSheet.Ticks;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Fields of the form of a visit: what was typed, what is wrong with it, how the stored visit
 * stands.
 */
final class VisitFields {

  private final Codes codes;
  private final TypedVisit typed;
  private final VisitSheets.Told told;

  VisitFields(Codes codes, TypedVisit typed, VisitSheets.Told told) {
    this.codes = codes;
    this.typed = typed;
    this.told = told;
  }

  Field field(String name) {
    return new Field(
        name, typed.text(name), told.wrong().getOrDefault(name, ""), stands(name, stored(name)));
  }

  private String stored(String name) {
    return told.stands() == null ? "" : told.stands().text(name);
  }

  private String stands(String name, String stored) {
    return told.stands() == null || stored.equals(typed.text(name))
        ? ""
        : stored.isEmpty() ? "nothing" : stored;
  }

  List<VerdictView> says(String name) {
    return told.says().stream().filter(verdict -> verdict.speaksOf(name)).toList();
  }

  Graded graded(String name, String label, String list, String none) {
    String chosen = typed.text(name);
    List<Pick> picks = new ArrayList<>();
    picks.add(new Pick("", none, "", chosen.isEmpty()));
    codes
        .list(list)
        .forEach(
            (code, meaning) ->
                picks.add(new Pick(code, Words.of(code), meaning, code.equals(chosen))));
    return new Graded(
        name,
        label,
        picks,
        told.wrong().getOrDefault(name, ""),
        stands(name, stored(name)),
        says(name.substring(name.indexOf('.') + 1)));
  }

  Ticks ticks(String name, String list) {
    Set<String> chosen = Set.copyOf(typed.all(name));
    List<Pick> picks = new ArrayList<>();
    codes
        .list(list)
        .forEach(
            (code, meaning) ->
                picks.add(new Pick(code, Words.title(code), meaning, chosen.contains(code))));
    boolean differs = told.stands() != null && !Set.copyOf(told.stands().all(name)).equals(chosen);
    String stands = differs ? Words.list(told.stands().all(name)) : "";
    return new Ticks(
        name,
        picks,
        told.wrong().getOrDefault(name, ""),
        differs && stands.isEmpty() ? "nothing" : stands);
  }
}
