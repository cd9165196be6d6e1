package coldround.intake;

import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What the header line of a file says: which column of the standard form stands where, in which
 * unit of measure. The columns of problems that a file of rejected rows has are passed over.
 *
 * <p>Columns that the profile makes of others come last, under the label of the first of those.
 *
 * @param labels the header cells as they stand in the file
 * @param places where in a row the cell under each label stands; -1 for one that is made
 * @param slots what each label names; null for a column to ignore
 * @param width cells up to the last label that says something
 * @param problems what the sender should know of the header
 * @param made columns that are made of others
 */
public record Heading(
    List<String> labels,
    List<Integer> places,
    List<Slot> slots,
    int width,
    List<RowProblem> problems,
    List<Made> made) {

  /**
   * Columns made of others.
   *
   * @param sources places among the labels
   */
  record Made(Profile.Derived how, List<Integer> sources) {}

  /**
   * A column of the file that is read.
   *
   * @param measure null for a column that does not measure
   */
  public record Slot(Column column, Measure measure) {}

  public Heading {
    labels = List.copyOf(labels);
    places = List.copyOf(places);
    slots = Collections.unmodifiableList(new ArrayList<>(slots));
    problems = List.copyOf(problems);
    made = List.copyOf(made);
  }

  /** The labels that stand in the file. */
  List<String> ownLabels() {
    return labels.subList(0, labels.size() - madeColumns());
  }

  /** The cells under those labels. */
  List<String> ownCells(List<String> cells) {
    return cells.subList(0, cells.size() - madeColumns());
  }

  private int madeColumns() {
    return made.stream().mapToInt(one -> one.how().columns().size()).sum();
  }

  /** Where among the labels the column of that name stands; -1 where it is not there. */
  int indexOf(String column) {
    for (int i = 0; i < slots.size(); i++) {
      if (slots.get(i) != null && slots.get(i).column().name().equals(column)) {
        return i;
      }
    }
    return -1;
  }

  /** How the file calls the column; its own name where the file has it not. */
  String label(String column) {
    int index = indexOf(column);
    return index < 0 ? column : labels.get(index);
  }
}
