package coldround.intake.edge;

import coldround.intake.DateOrder;
import coldround.intake.Mending.Choice;
import coldround.intake.Profile;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.List;

/**
 * How a file is to be read, as it was typed or as the trial has it.
 *
 * @param choices what each heading means
 * @param sign of decimals
 * @param name for files like this
 * @param replaces that name where it is known to be another's; empty otherwise
 */
record FileForm(List<Choice> choices, DateOrder dates, char sign, String name, String replaces) {

  static FileForm of(HeldFile.Trial trial) {
    Profile profile = trial.profile();
    return new FileForm(trial.choices(), profile.dates(), profile.decimalSign(), "", "");
  }

  static FileForm of(HeldFile file, MultivaluedMap<String, String> sent) {
    return new FileForm(
        choices(file, sent),
        DateOrder.find(first(sent, "dates")).orElse(DateOrder.FROM_COLUMN),
        first(sent, "decimal").equals(",") ? ',' : '.',
        first(sent, "name"),
        first(sent, "replaces"));
  }

  private static List<Choice> choices(HeldFile file, MultivaluedMap<String, String> sent) {
    List<Choice> guessed = file.trial().choices();
    List<Choice> choices = new ArrayList<>();
    for (int i = 0; i < guessed.size(); i++) {
      boolean said = sent.containsKey("column-" + i);
      String column = said ? first(sent, "column-" + i) : guessed.get(i).column();
      choices.add(new Choice(column, first(sent, "measure-" + i)));
    }
    return choices;
  }

  private static String first(MultivaluedMap<String, String> sent, String name) {
    String value = sent.getFirst(name);
    return value == null ? "" : value.strip();
  }

  /** Names of the fields at which something can be told. */
  List<String> fields() {
    List<String> fields = new ArrayList<>(List.of("name"));
    for (int i = 0; i < choices.size(); i++) {
      fields.add("column-" + i);
    }
    return fields;
  }
}
