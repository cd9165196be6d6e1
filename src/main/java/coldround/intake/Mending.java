package coldround.intake;

import coldround.fleet.Kind;
import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Makes a profile of what was guessed of a file and what a person chose instead.
 *
 * @param columns those of the kind
 */
public record Mending(Kind kind, List<Column> columns, Proposal proposal) {

  private static final Pattern BRACKET = Pattern.compile("(?s)(.*\\S)\\s*[\\[(][^\\])\\[(]*[\\])]");

  /**
   * What one header is to mean.
   *
   * @param column name in the standard form; empty for none
   * @param measure code of the unit of measure; empty for that of the header or the standard form
   */
  public record Choice(String column, String measure) {}

  /** Two headers are to mean one column. */
  public static final class TwiceMeant extends IllegalArgumentException {
    private final int second;

    TwiceMeant(int second, String message) {
      super(message);
      this.second = second;
    }

    /** Place of the second one among the choices. */
    public int second() {
      return second;
    }
  }

  public Mending {
    columns = List.copyOf(columns);
  }

  /** What was guessed, as choices in the order of the guesses. */
  public List<Choice> guessed() {
    return proposal.guesses().stream()
        .map(guess -> new Choice(guess.column() == null ? "" : guess.column(), guess.measure()))
        .toList();
  }

  /** True for a header that is the name of a column itself: it means that column always. */
  public boolean isFixed(String header) {
    String name = Profile.plain(bare(header));
    return columns.stream().anyMatch(column -> column.name().equals(name));
  }

  /**
   * The profile as chosen; what was guessed of words and units of measure stays.
   *
   * @param choices one for each guess, in their order
   * @throws TwiceMeant when two headers are to mean one column, said in words
   */
  public Profile profile(String name, List<Choice> choices, DateOrder dates, char decimalSign) {
    Map<Kind, List<Profile.Alias>> aliases = new HashMap<>(proposal.profile().columns());
    aliases.put(kind, aliases(choices));
    Profile guessed = proposal.profile();
    return new Profile(
        name,
        "mended on the page",
        dates,
        decimalSign,
        guessed.measureNames(),
        aliases,
        guessed.values(),
        guessed.derived(),
        guessed.notTaken());
  }

  private List<Profile.Alias> aliases(List<Choice> choices) {
    List<Profile.Alias> aliases = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    for (int i = 0; i < choices.size(); i++) {
      String header = proposal.guesses().get(i).header();
      Choice choice = choices.get(i);
      Optional<Column> column =
          columns.stream().filter(c -> c.name().equals(choice.column())).findFirst();
      if (column.isPresent()) {
        if (!taken.add(choice.column())) {
          throw new TwiceMeant(
              i,
              "Two headers are to mean '%s', the second is '%s'. Choose another column for one of them."
                  .formatted(choice.column(), RowProblem.shown(header)));
        }
        aliases.add(alias(header, column.get(), choice.measure()));
      }
    }
    return aliases;
  }

  private static Profile.Alias alias(String header, Column column, String code) {
    Optional<Measure> measure = Measure.find(code).filter(column::accepts);
    // named as a whole, its bracket is not read; so only where the unit of measure is known
    String name = measure.isPresent() ? header : bare(header);
    return new Profile.Alias(column.name(), List.of(name), List.of(), measure.orElse(null));
  }

  private static String bare(String header) {
    Matcher form = BRACKET.matcher(header);
    return form.matches() ? form.group(1) : header;
  }
}
