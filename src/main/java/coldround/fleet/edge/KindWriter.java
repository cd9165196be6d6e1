package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Consumer;

/** Stores the entries of some kinds of list: one class a kind. */
interface KindWriter {

  Set<Kind> kinds();

  /**
   * @param notes told of every unit whose history changes
   * @return outcomes in the order of the entries
   */
  List<Outcome> write(List<Entry> batch, Notes notes);

  /**
   * Lays an entry over what is stored and writes the result if it differs.
   *
   * @param stored null for a new one
   * @param changed told what was before and what is now
   */
  static <T> Outcome put(
      T stored,
      Entry entry,
      BiFunction<T, Entry, T> merging,
      Consumer<T> write,
      BiConsumer<T, T> changed) {
    T merged = merging.apply(stored, entry);
    if (merged.equals(stored)) {
      return Outcome.UNCHANGED;
    }
    write.accept(merged);
    if (stored == null) {
      return Outcome.CREATED;
    }
    changed.accept(stored, merged);
    return Outcome.CHANGED;
  }
}
