package coldround.reason;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;

/**
 * The few facts of a reason in the order in which they are told. Reasons are made by the hundred
 * thousand and read by the page, so this is two arrays and not a table of hashes.
 */
public final class Inputs extends AbstractMap<String, Object> {

  private final String[] names;
  private final Object[] facts;

  private Inputs(String[] names, Object[] facts) {
    this.names = names;
    this.facts = facts;
  }

  /**
   * Names and facts by turns; of a name that comes twice the last fact holds, in the first place.
   *
   * @throws IllegalArgumentException for a name without a fact
   */
  public static Inputs of(Object... namesAndFacts) {
    if (namesAndFacts.length % 2 != 0) {
      throw new IllegalArgumentException("no fact for " + namesAndFacts[namesAndFacts.length - 1]);
    }
    return of(new String[0], new Object[0], namesAndFacts);
  }

  static Inputs copyOf(Map<String, Object> map) {
    if (map instanceof Inputs inputs) {
      return inputs;
    }
    return new Inputs(map.keySet().toArray(new String[0]), map.values().toArray());
  }

  /** These and more behind them. */
  public static Inputs plus(Map<String, Object> map, Object... namesAndFacts) {
    Inputs first = copyOf(map);
    return of(first.names, first.facts, namesAndFacts);
  }

  private static Inputs of(String[] names, Object[] facts, Object... more) {
    int count = names.length;
    String[] allNames = Arrays.copyOf(names, count + more.length / 2);
    Object[] allFacts = Arrays.copyOf(facts, allNames.length);
    for (int i = 0; i < more.length; i += 2) {
      int place = place(allNames, count, (String) more[i]);
      allNames[place] = (String) more[i];
      allFacts[place] = more[i + 1];
      count = Math.max(count, place + 1);
    }
    return count == allNames.length
        ? new Inputs(allNames, allFacts)
        : new Inputs(Arrays.copyOf(allNames, count), Arrays.copyOf(allFacts, count));
  }

  /** Where the name stands; the end where it does not. */
  private static int place(String[] names, int count, Object name) {
    for (int i = 0; i < count; i++) {
      if (names[i].equals(name)) {
        return i;
      }
    }
    return count;
  }

  @Override
  public Object get(Object name) {
    int place = place(names, names.length, name);
    return place == names.length ? null : facts[place];
  }

  @Override
  public boolean containsKey(Object name) {
    return place(names, names.length, name) < names.length;
  }

  @Override
  public int size() {
    return names.length;
  }

  @Override
  public Set<Entry<String, Object>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public int size() {
        return names.length;
      }

      @Override
      public Iterator<Entry<String, Object>> iterator() {
        return entries();
      }
    };
  }

  private Iterator<Entry<String, Object>> entries() {
    return new Iterator<>() {
      private int next;

      @Override
      public boolean hasNext() {
        return next < names.length;
      }

      @Override
      public Entry<String, Object> next() {
        if (next == names.length) {
          throw new NoSuchElementException();
        }
        return new SimpleImmutableEntry<>(names[next], facts[next++]);
      }
    };
  }

  Object fact(int place) {
    return facts[place];
  }

  String name(int place) {
    return names[place];
  }
}
