package coldround.intake.edge;

import coldround.intake.Column;
import coldround.intake.DateOrder;
import coldround.intake.Mending.Choice;
import coldround.intake.ProblemGroup;
import coldround.intake.Proposal.Guess;
import coldround.intake.Receipt;
import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** What the pages of imports show. */
public final class ImportView {

  /** An entry to choose. */
  public record Option(String value, String label, boolean chosen) {}

  /**
   * One header of the file.
   *
   * @param fixed it is the name of a column, so there is nothing to choose
   * @param trust how sure the guess is, in words
   */
  public record Line(
      int number,
      String header,
      boolean fixed,
      String column,
      List<Option> columns,
      List<Option> measures,
      String trust,
      boolean sure) {

    /** Name of the field that says what the header means. */
    public String field() {
      return "column-" + number;
    }
  }

  /**
   * How far an import is.
   *
   * @param state that of the run; writing where new rows that were held back are written
   * @param percent 0 to 100; -1 where it cannot be known
   */
  public record Way(String run, String state, long rows, long percent) {}

  /** Rows as they were understood, under the columns of the standard form. */
  public record Rows(List<String> columns, List<List<String>> cells) {}

  /**
   * What an import did, or would do.
   *
   * @param rejecting groups of problems for which rows are left out
   * @param noting groups about rows that are taken
   */
  public record Outcome(
      Receipt receipt, List<ProblemGroup> rejecting, List<ProblemGroup> noting, Rows first) {}

  private ImportView() {}

  static Way way(RunView view) {
    RunView.ProgressView progress = view.progress();
    long percent = progress.share() == null ? -1 : Math.round(progress.share().doubleValue() * 100);
    String state = progress.rowsWritten() == null ? view.state() : "writing";
    return new Way(view.id(), state, progress.rowsDone(), percent);
  }

  static Outcome outcome(Receipt receipt) {
    return new Outcome(
        receipt,
        receipt.problemGroups().stream().filter(ProblemGroup::rejects).toList(),
        receipt.problemGroups().stream().filter(group -> !group.rejects()).toList(),
        rows(receipt.firstRows()));
  }

  private static Rows rows(List<Map<String, String>> rows) {
    List<String> columns = rows.stream().flatMap(row -> row.keySet().stream()).distinct().toList();
    return new Rows(
        columns,
        rows.stream()
            .map(row -> columns.stream().map(column -> row.getOrDefault(column, "")).toList())
            .toList());
  }

  static List<Line> lines(HeldFile file, List<Choice> choices) {
    List<Guess> guesses = file.mending().proposal().guesses();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < guesses.size(); i++) {
      lines.add(line(i, guesses.get(i), choices.get(i), file));
    }
    return lines;
  }

  private static Line line(int number, Guess guess, Choice choice, HeldFile file) {
    boolean mended = !choice.column().equals(guess.column() == null ? "" : guess.column());
    List<Column> columns = file.mending().columns();
    return new Line(
        number,
        guess.header(),
        file.mending().isFixed(guess.header()),
        choice.column(),
        columns.stream()
            .map(c -> new Option(c.name(), c.name(), c.name().equals(choice.column())))
            .toList(),
        measures(columns, choice),
        mended ? "chosen by you" : trust(guess),
        mended || guess.sure());
  }

  private static String trust(Guess guess) {
    if (guess.column() == null) {
      return "not known, left out";
    }
    String share = Math.round(guess.confidence() * 100) + " %";
    return guess.sure() ? share + ", sure" : share + ", please check";
  }

  /** Units of measure for the chosen column; none where it has none. */
  private static List<Option> measures(List<Column> columns, Choice choice) {
    return columns.stream()
        .filter(column -> column.name().equals(choice.column()))
        .flatMap(column -> Measure.all().stream().filter(column::accepts))
        .map(m -> new Option(m.code(), m.code(), m.code().equals(choice.measure())))
        .toList();
  }

  static List<Option> dates(DateOrder chosen) {
    return Arrays.stream(DateOrder.values())
        .map(order -> new Option(order.code(), said(order), order == chosen))
        .toList();
  }

  private static String said(DateOrder order) {
    return order == DateOrder.FROM_COLUMN ? "as the file proves" : order.example();
  }

  static List<Option> decimals(char chosen) {
    return Stream.of('.', ',').map(s -> new Option("" + s, "1" + s + "5", s == chosen)).toList();
  }

  /** "travel-times" as "Travel times". */
  static String title(String code) {
    String words = code.replace('-', ' ');
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Where a newcomer goes on from a list: to the next one, and at last to what is due. */
  static Option next(String kind) {
    return switch (kind) {
      case "customers" -> new Option("/imports?kind=sites", "Next: sites", true);
      case "sites" -> new Option("/imports?kind=units", "Next: units", true);
      case "units" -> new Option("/imports?kind=visits", "Next: visits", true);
      default -> new Option("/upkeep", "See what is due", true);
    };
  }
}
