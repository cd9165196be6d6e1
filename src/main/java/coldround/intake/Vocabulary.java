package coldround.intake;

import coldround.fleet.Kind;
import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;

/** What all known profiles together say of headers, words and units of measure. */
final class Vocabulary {

  private static final JaroWinklerSimilarity ALIKE = new JaroWinklerSimilarity();

  private final Collection<Profile> profiles;

  Vocabulary(Collection<Profile> profiles) {
    this.profiles = profiles;
  }

  /** How alike a header is to what the column is called anywhere: 1 for a name of it. */
  double likeness(Kind kind, Column column, String header) {
    String plain = Profile.plain(header);
    double best = likeness(plain, column.name());
    for (Profile profile : profiles) {
      for (Profile.Alias alias : profile.aliases(kind)) {
        if (alias.column().equals(column.name())) {
          best = Math.max(best, likeness(plain, alias, header));
        }
      }
    }
    return best;
  }

  private static double likeness(String plain, Profile.Alias alias, String header) {
    if (alias.fits(header)) {
      return 1;
    }
    return alias.names().stream().mapToDouble(name -> likeness(plain, name)).max().orElse(0);
  }

  /** The higher of the likeness of the letters and that of the words, whatever their order. */
  private static double likeness(String one, String other) {
    return one.equals(other) ? 1 : Math.max(letters(one, other), words(one, other));
  }

  /** Short names are alike by chance: what they share counts less. */
  private static double letters(String one, String other) {
    double alike = ALIKE.apply(one, other);
    int shorter = Math.min(one.length(), other.length());
    return Math.min(0.99, shorter < 4 ? alike * shorter / 4 : alike);
  }

  private static double words(String one, String other) {
    Set<String> ours = new HashSet<>(Arrays.asList(one.split("_")));
    Set<String> theirs = new HashSet<>(Arrays.asList(other.split("_")));
    int all = ours.size() + theirs.size();
    ours.retainAll(theirs);
    return Math.min(0.99, 2.0 * ours.size() / all);
  }

  /** The unit of measure that a profile gives to the header; null for none. */
  Measure measure(Kind kind, String column, String header) {
    return profiles.stream()
        .flatMap(profile -> profile.aliases(kind).stream())
        .filter(alias -> alias.column().equals(column) && alias.fits(header))
        .map(Profile.Alias::measure)
        .filter(measure -> measure != null)
        .findFirst()
        .orElse(null);
  }

  /** Columns that a profile makes of headers which are all there. */
  List<Profile.Derived> derived(Kind kind, List<String> headers) {
    List<String> plain = headers.stream().map(Profile::plain).toList();
    List<Profile.Derived> found = new ArrayList<>();
    for (Profile profile : profiles) {
      for (Profile.Derived one : profile.derived(kind)) {
        if (plain.containsAll(one.headers()) && !found.contains(one)) {
          found.add(one);
        }
      }
    }
    return found;
  }

  Map<String, Measure> measureNames() {
    Map<String, Measure> names = new HashMap<>();
    profiles.forEach(profile -> profile.measureNames().forEach(names::putIfAbsent));
    return names;
  }

  /** Words on which all profiles that have them agree. */
  Map<String, Map<String, String>> words() {
    Map<String, Map<String, String>> agreed = new HashMap<>();
    Set<String> disputed = new HashSet<>();
    for (Profile profile : profiles) {
      profile
          .values()
          .forEach(
              (list, words) ->
                  words.forEach(
                      (word, code) -> {
                        String before =
                            agreed
                                .computeIfAbsent(list, any -> new HashMap<>())
                                .putIfAbsent(word, code);
                        if (before != null && !before.equals(code)) {
                          disputed.add(list + '\n' + word);
                        }
                      }));
    }
    agreed.forEach(
        (list, words) -> words.keySet().removeIf(w -> disputed.contains(list + '\n' + w)));
    return agreed;
  }

  Set<String> notTaken() {
    Set<String> words = new TreeSet<>();
    profiles.forEach(profile -> words.addAll(profile.notTaken()));
    return words;
  }
}
