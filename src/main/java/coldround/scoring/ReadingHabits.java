package coldround.scoring;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How readings are written down: before or after the work of their visit
 * (scoring/visit-purposes.csv), and what a note says against them (scoring/note-phrases.csv).
 */
public final class ReadingHabits {

  /** Words in a note after which the pressures of the visit are not judged. */
  record NotePhrase(String phrase, String why, Source source) {}

  private final Map<String, Boolean> asFound = new HashMap<>();
  private final List<NotePhrase> phrases = new ArrayList<>();

  private ReadingHabits() {}

  public static ReadingHabits load(RuleTables tables) {
    ReadingHabits habits = new ReadingHabits();
    tables
        .read(
            "visit-purposes.csv",
            "purpose",
            row -> {
              row.source();
              boolean found =
                  row.oneOf("readings", Set.of("as-found", "as-left")).equals("as-found");
              return Map.entry(row.required("purpose"), found);
            })
        .forEach(entry -> habits.asFound.put(entry.getKey(), entry.getValue()));
    habits.phrases.addAll(
        tables.read(
            "note-phrases.csv",
            "phrase",
            row ->
                new NotePhrase(
                    row.required("phrase").toLowerCase(Locale.ROOT),
                    row.required("why"),
                    row.source())));
    return habits;
  }

  /** True when readings of such a visit are from before its work. */
  boolean asFound(String purpose) {
    return asFound.getOrDefault(purpose, false);
  }

  Optional<NotePhrase> phraseIn(String note) {
    if (note.isEmpty()) {
      return Optional.empty();
    }
    String lower = note.toLowerCase(Locale.ROOT);
    for (NotePhrase phrase : phrases) {
      if (lower.contains(phrase.phrase)) {
        return Optional.of(phrase);
      }
    }
    return Optional.empty();
  }
}
