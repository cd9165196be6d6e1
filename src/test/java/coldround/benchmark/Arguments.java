package coldround.benchmark;

import java.util.List;

/**
 * What a program is asked for: its own arguments, and the kind of store where the last one says it.
 *
 * @param usage told where they do not fit, such as {@code score UNITS READINGS [postgresql]}
 */
record Arguments(String usage, List<String> own, Store.Kind store) {

  /**
   * @param least own arguments that there must be
   * @param most own arguments that there may be
   * @throws IllegalArgumentException when there are fewer or more
   */
  static Arguments of(String usage, int least, int most, String... given) {
    List<String> own = List.of(given);
    Store.Kind store = Store.Kind.H2;
    if (!own.isEmpty() && own.get(own.size() - 1).equals(Store.Kind.POSTGRESQL.toString())) {
      store = Store.Kind.POSTGRESQL;
      own = own.subList(0, own.size() - 1);
    }
    if (own.size() < least || own.size() > most) {
      throw new IllegalArgumentException(usage);
    }
    return new Arguments(usage, own, store);
  }

  /** The same for a program that takes so many and no others. */
  static Arguments of(String usage, int count, String... given) {
    return of(usage, count, count, given);
  }

  /**
   * A whole number above 0.
   *
   * @throws IllegalArgumentException when it is something else
   */
  int number(int place) {
    String text = own.get(place);
    if (!text.matches("[1-9][0-9]{0,8}")) {
      throw new IllegalArgumentException(
          usage + ": '" + text + "' is no whole number from 1 to 999999999");
    }
    return Integer.parseInt(text);
  }

  /** The same, with what holds where nothing is said. */
  int number(int place, int usually) {
    return place < own.size() ? number(place) : usually;
  }
}
