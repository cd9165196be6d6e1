package coldround.intake;

import coldround.fleet.Kind;
import coldround.quantity.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * How the files of one origin are written: what their headers, units of measure, dates, numbers and
 * words mean in the standard form.
 *
 * @param decimalSign point or comma
 * @param measureNames other ways to write a unit of measure, with its code
 * @param columns by kind, other headers of its columns
 * @param values by list of codes, what stands in cells (in lower case) with the code it means
 * @param derived by kind, columns to be made of others
 * @param notTaken words (in lower case) that stand for a reading where none was taken
 */
public record Profile(
    String name,
    String meaning,
    DateOrder dates,
    char decimalSign,
    Map<String, Measure> measureNames,
    Map<Kind, List<Alias>> columns,
    Map<String, Map<String, String>> values,
    Map<Kind, List<Derived>> derived,
    Set<String> notTaken) {

  /**
   * Columns made of others: one is split at a sign, or several are joined with it.
   *
   * @param headers of the file, compared whatever their case and blanks
   * @param sign what stands, or is to stand, between the parts
   * @param columns names in the standard form, in the order of the parts
   */
  public record Derived(List<String> headers, String sign, List<String> columns) {
    public Derived {
      headers = headers.stream().map(Profile::plain).toList();
      columns = List.copyOf(columns);
      boolean splits = headers.size() == 1 && columns.size() > 1 && !sign.isBlank();
      boolean joins = headers.size() > 1 && columns.size() == 1;
      if (!splits && !joins) {
        throw new IllegalArgumentException(
            "one header is split at a sign into several columns, or several are joined into one");
      }
    }

    /** What the cells under the headers say of each column; an absent part is empty. */
    List<String> parts(List<String> cells) {
      if (columns.size() == 1) {
        List<String> said = cells.stream().filter(cell -> !cell.isEmpty()).toList();
        return List.of(String.join(sign, said));
      }
      List<String> parts = new ArrayList<>();
      for (String part : cells.get(0).split(Pattern.quote(sign), columns.size())) {
        parts.add(part.strip());
      }
      while (parts.size() < columns.size()) {
        parts.add("");
      }
      return parts;
    }
  }

  /**
   * Other headers of one column.
   *
   * @param column name in the standard form
   * @param names headers, compared whatever their case and blanks
   * @param patterns regular expressions that a whole header must fit
   * @param measure unit of measure where neither header nor cell names one; null for that of the
   *     standard form
   */
  public record Alias(String column, List<String> names, List<Pattern> patterns, Measure measure) {
    public Alias {
      names = names.stream().map(Profile::plain).toList();
      patterns = List.copyOf(patterns);
    }

    boolean names(String header) {
      return names.contains(plain(header));
    }

    boolean fits(String header) {
      return names(header)
          || patterns.stream().anyMatch(pattern -> pattern.matcher(header).matches());
    }
  }

  /** Name that value synonyms of refrigerants stand under. */
  static final String REFRIGERANT = "refrigerant";

  /** The standard form with no other ways to write anything. */
  public static final Profile STANDARD =
      new Profile(
          "standard", "columns.csv", DateOrder.FROM_COLUMN, '.', Map.of(), Map.of(), Map.of());

  /** True for what a profile can be called. */
  public static boolean isName(String name) {
    return name.matches("[a-z0-9][a-z0-9-]{0,59}");
  }

  public Profile {
    if (!isName(name)) {
      throw new IllegalArgumentException(
          "a profile is named by lower-case letters, digits and hyphens, not '" + name + "'");
    }
    if (decimalSign != '.' && decimalSign != ',') {
      throw new IllegalArgumentException("the decimal sign is a point or a comma");
    }
    measureNames = Map.copyOf(measureNames);
    columns = Map.copyOf(columns);
    values = Map.copyOf(values);
    derived = Map.copyOf(derived);
    notTaken = Set.copyOf(notTaken);
  }

  /** One that makes no column of others. */
  public Profile(
      String name,
      String meaning,
      DateOrder dates,
      char decimalSign,
      Map<String, Measure> measureNames,
      Map<Kind, List<Alias>> columns,
      Map<String, Map<String, String>> values) {
    this(name, meaning, dates, decimalSign, measureNames, columns, values, Map.of(), Set.of());
  }

  /** A header whatever its case, blanks and underscores. */
  static String plain(String header) {
    return header.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "_");
  }

  /** The unit of measure that a text names. */
  Optional<Measure> measure(String text) {
    Measure named = measureNames.get(text);
    return named != null ? Optional.of(named) : Measure.find(text);
  }

  /**
   * The code that a word in a cell means by this profile; the word itself where it says nothing.
   */
  String meant(String list, String word) {
    Map<String, String> synonyms = values.get(list);
    return synonyms == null ? word : synonyms.getOrDefault(word.toLowerCase(Locale.ROOT), word);
  }

  /** The unit of measure of a column whose header names none. */
  Optional<Measure> measure(Kind kind, String column) {
    return aliases(kind).stream()
        .filter(alias -> alias.column().equals(column) && alias.measure() != null)
        .map(Alias::measure)
        .findFirst();
  }

  /** What does not fit the columns and codes it speaks of. */
  List<String> faults(Columns known, Codes codes) {
    List<String> faults = new ArrayList<>();
    columns.forEach(
        (kind, aliases) -> aliases.forEach(alias -> faults.addAll(faults(alias, kind, known))));
    derived.forEach(
        (kind, all) ->
            all.stream()
                .flatMap(one -> one.columns().stream())
                .filter(column -> known.find(kind, column).isEmpty())
                .forEach(column -> faults.add(kind.code() + " has no column '" + column + "'")));
    values.forEach(
        (list, meant) ->
            meant.values().stream()
                .filter(code -> !list.equals(REFRIGERANT) && !codes.list(list).containsKey(code))
                .forEach(code -> faults.add("codes.csv has no '" + code + "' in list " + list)));
    return faults;
  }

  private static List<String> faults(Alias alias, Kind kind, Columns known) {
    Optional<Column> column = known.find(kind, alias.column());
    if (column.isEmpty()) {
      return List.of(kind.code() + " has no column '" + alias.column() + "'");
    }
    boolean fits = alias.measure() == null || column.get().accepts(alias.measure());
    return fits ? List.of() : List.of(alias.measure() + " does not measure " + alias.column());
  }

  List<Derived> derived(Kind kind) {
    return derived.getOrDefault(kind, List.of());
  }

  /** True for a word that says that nothing was read. */
  boolean saysNotTaken(String text) {
    return !notTaken.isEmpty() && notTaken.contains(text.toLowerCase(Locale.ROOT));
  }

  List<Alias> aliases(Kind kind) {
    return columns.getOrDefault(kind, List.of());
  }
}
