package coldround.intake;

import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What the header line of a file says: which column of the standard form stands where, in which
 * unit of measure. The columns of problems that a file of rejected rows has are passed over.
 *
 * @param labels the header cells as they stand in the file
 * @param places where in a row the cell under each label stands
 * @param slots what each label names; null for a column to ignore
 * @param width cells up to the last label that says something
 * @param problems what the sender should know of the header
 */
public record Heading(
    List<String> labels,
    List<Integer> places,
    List<Slot> slots,
    int width,
    List<RowProblem> problems) {

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
