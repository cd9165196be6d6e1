package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.intake.DateOrder;
import coldround.intake.Profile;
import coldround.quantity.Measure;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * A profile as files and calls write it, by the names of standard.yaml; all but the name may lack.
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
record ProfileDocument(
    String name,
    String meaning,
    String dates,
    String decimal,
    @JsonProperty("measure_names") Map<String, String> measureNames,
    @JsonProperty("not_taken") Set<String> notTaken,
    Map<String, Map<String, ColumnNames>> columns,
    Map<String, List<Combined>> combined,
    Map<String, Map<String, String>> values) {

  /** What is said of one column. */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  record ColumnNames(List<String> aliases, List<String> patterns, String measure) {
    private Profile.Alias alias(String column) {
      return new Profile.Alias(
          column,
          orEmpty(aliases),
          orEmpty(patterns).stream()
              .map(pattern -> Pattern.compile(pattern, Pattern.CASE_INSENSITIVE))
              .toList(),
          measure == null ? null : Measure.of(measure));
    }

    private static ColumnNames of(Profile.Alias alias) {
      return new ColumnNames(
          alias.names(),
          alias.patterns().stream().map(Pattern::pattern).toList(),
          alias.measure() == null ? null : alias.measure().code());
    }
  }

  /** One header split into columns, or several joined into one. */
  record Combined(List<String> headers, String sign, List<String> columns) {
    private Profile.Derived derived() {
      return new Profile.Derived(orEmpty(headers), sign == null ? " " : sign, orEmpty(columns));
    }
  }

  /**
   * @throws IllegalArgumentException for what is no profile, said in words
   */
  Profile profile() {
    return new Profile(
        name == null ? "" : name,
        meaning == null ? "" : meaning,
        order(),
        decimalSign(),
        measures(),
        aliases(),
        synonyms(),
        derived(),
        lower(notTaken == null ? Set.of() : notTaken));
  }

  private static <T> List<T> orEmpty(List<T> list) {
    return list == null ? List.of() : list;
  }

  private static <K, V> Map<K, V> orEmpty(Map<K, V> map) {
    return map == null ? Map.of() : map;
  }

  private DateOrder order() {
    return dates == null
        ? DateOrder.FROM_COLUMN
        : DateOrder.find(dates)
            .orElseThrow(() -> new IllegalArgumentException("dates: there is no order " + dates));
  }

  private char decimalSign() {
    if (decimal == null || decimal.equals("point")) {
      return '.';
    }
    if (decimal.equals("comma")) {
      return ',';
    }
    throw new IllegalArgumentException("decimal is point or comma, not " + decimal);
  }

  private Map<String, Measure> measures() {
    Map<String, Measure> measures = new HashMap<>();
    orEmpty(measureNames).forEach((written, code) -> measures.put(written, Measure.of(code)));
    return measures;
  }

  private static Kind kind(String code) {
    return Kind.find(code)
        .orElseThrow(() -> new IllegalArgumentException("columns: no kind " + code));
  }

  private Map<Kind, List<Profile.Alias>> aliases() {
    Map<Kind, List<Profile.Alias>> all = new EnumMap<>(Kind.class);
    orEmpty(columns)
        .forEach(
            (code, byName) -> {
              List<Profile.Alias> aliases = new ArrayList<>();
              byName.forEach((column, names) -> aliases.add(names.alias(column)));
              all.put(kind(code), aliases);
            });
    return all;
  }

  private Map<Kind, List<Profile.Derived>> derived() {
    Map<Kind, List<Profile.Derived>> all = new EnumMap<>(Kind.class);
    orEmpty(combined)
        .forEach(
            (code, list) -> all.put(kind(code), list.stream().map(Combined::derived).toList()));
    return all;
  }

  private Map<String, Map<String, String>> synonyms() {
    Map<String, Map<String, String>> all = new HashMap<>();
    orEmpty(values)
        .forEach(
            (list, words) -> {
              Map<String, String> lower = new HashMap<>();
              words.forEach((word, code) -> lower.put(word.toLowerCase(Locale.ROOT), code));
              all.put(list, lower);
            });
    return all;
  }

  private static Set<String> lower(Set<String> words) {
    Set<String> lower = new HashSet<>();
    words.forEach(word -> lower.add(word.toLowerCase(Locale.ROOT)));
    return lower;
  }

  /** The document that makes the profile again. */
  static ProfileDocument of(Profile profile) {
    Map<String, String> measures = new TreeMap<>();
    profile.measureNames().forEach((written, measure) -> measures.put(written, measure.code()));
    Map<String, Map<String, ColumnNames>> columns = new TreeMap<>();
    profile
        .columns()
        .forEach(
            (kind, aliases) -> {
              Map<String, ColumnNames> names = new TreeMap<>();
              aliases.forEach(alias -> names.put(alias.column(), ColumnNames.of(alias)));
              columns.put(kind.code(), names);
            });
    Map<String, List<Combined>> combined = new TreeMap<>();
    profile
        .derived()
        .forEach(
            (kind, list) ->
                combined.put(
                    kind.code(),
                    list.stream()
                        .map(one -> new Combined(one.headers(), one.sign(), one.columns()))
                        .toList()));
    Map<String, Map<String, String>> values = new TreeMap<>();
    profile.values().forEach((list, words) -> values.put(list, new TreeMap<>(words)));
    return new ProfileDocument(
        profile.name(),
        profile.meaning(),
        profile.dates().code(),
        profile.decimalSign() == ',' ? "comma" : "point",
        measures,
        new TreeSet<>(profile.notTaken()),
        columns,
        combined,
        values);
  }
}
