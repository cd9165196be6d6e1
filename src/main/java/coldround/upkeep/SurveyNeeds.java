package coldround.upkeep;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a survey is to find out: scoring/survey-needs.csv. */
final class SurveyNeeds {

  private static final String FILE = "survey-needs.csv";
  static final List<String> ALL =
      List.of(
          "visit",
          "evidence",
          "kind",
          "refrigerant",
          "split",
          "cut-out",
          "charge",
          "installed",
          "place");

  /**
   * @param text what to measure or look up
   * @param decides true when the need alone asks for a survey
   */
  record Need(String need, String text, boolean decides, Source source) {}

  private final Map<String, Need> byName = new HashMap<>();

  private SurveyNeeds() {}

  static SurveyNeeds load(RuleTables tables) {
    SurveyNeeds needs = new SurveyNeeds();
    tables
        .read(
            FILE,
            "need",
            row ->
                new Need(
                    row.oneOf("need", Set.copyOf(ALL)),
                    row.required("text"),
                    row.oneOf("weight", Set.of("decides", "helps")).equals("decides"),
                    row.source()))
        .forEach(need -> needs.byName.put(need.need, need));
    for (String name : ALL) {
      if (!needs.byName.containsKey(name)) {
        tables.problem(FILE, 0, "need", "the row '" + name + "' is missing");
      }
    }
    return needs;
  }

  Need get(String name) {
    return byName.get(name);
  }
}
