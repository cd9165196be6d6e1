package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.intake.DateOrder;
import coldround.intake.Profile;
import coldround.quantity.Measure;
import coldround.table.RuleTables;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import io.quarkus.runtime.util.ClassPathUtils;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the profiles of import/profiles: one YAML file each, those of the operator first. */
public final class ProfileFiles {

  private static final String FOLDER = "profiles";
  private static final String END = ".yaml";
  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY);

  /** What a file says; each entry but the name may be left out. */
  record Said(
      String name,
      String meaning,
      String dates,
      String decimal,
      Map<String, String> measure_names,
      Map<String, Map<String, SaidColumn>> columns,
      Map<String, Map<String, String>> values) {}

  /** What a file says of one column. */
  record SaidColumn(List<String> aliases, List<String> patterns, String measure) {}

  private final RuleTables tables;
  private final Map<String, String> texts = new TreeMap<>();

  private ProfileFiles(RuleTables tables) {
    this.tables = tables;
  }

  /**
   * Every profile, packaged or in the folder; what is wrong with one becomes a problem of the
   * tables.
   *
   * @param override folder of the operator, null for none
   */
  public static List<Profile> read(RuleTables tables, Path override) {
    ProfileFiles files = new ProfileFiles(tables);
    files.collect(override);
    List<Profile> profiles = new ArrayList<>();
    files.texts.forEach((file, text) -> files.add(file, text, profiles));
    return profiles;
  }

  private void collect(Path override) {
    try {
      ClassPathUtils.consumeAsPaths("import/" + FOLDER, this::collectFolder);
      if (override != null && Files.isDirectory(override.resolve(FOLDER))) {
        collectFolder(override.resolve(FOLDER));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void collectFolder(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        String name = file.getFileName().toString();
        if (name.endsWith(END)) {
          texts.put(name, Files.readString(file));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(String file, String text, List<Profile> profiles) {
    try {
      Profile profile = profile(YAML.readValue(text, Said.class));
      if (!file.equals(profile.name() + END)) {
        throw new IllegalArgumentException("the file of profile " + profile.name() + " is " + file);
      }
      profiles.add(profile);
    } catch (JsonProcessingException e) {
      long line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      tables.problem(FOLDER + "/" + file, line, "", e.getOriginalMessage());
    } catch (IllegalArgumentException e) {
      tables.problem(FOLDER + "/" + file, 0, "", e.getMessage());
    }
  }

  private static Profile profile(Said said) {
    return new Profile(
        said.name() == null ? "" : said.name(),
        said.meaning() == null ? "" : said.meaning(),
        order(said.dates()),
        decimalSign(said.decimal()),
        measures(orEmpty(said.measure_names())),
        columns(orEmpty(said.columns())),
        values(orEmpty(said.values())));
  }

  private static <K, V> Map<K, V> orEmpty(Map<K, V> map) {
    return map == null ? Map.of() : map;
  }

  private static DateOrder order(String code) {
    return code == null
        ? DateOrder.YEAR_MONTH_DAY
        : DateOrder.find(code)
            .orElseThrow(() -> new IllegalArgumentException("dates: there is no order " + code));
  }

  private static char decimalSign(String word) {
    if (word == null || word.equals("point")) {
      return '.';
    }
    if (word.equals("comma")) {
      return ',';
    }
    throw new IllegalArgumentException("decimal is point or comma, not " + word);
  }

  private static Map<String, Measure> measures(Map<String, String> codes) {
    Map<String, Measure> measures = new HashMap<>();
    codes.forEach((name, code) -> measures.put(name, Measure.of(code)));
    return measures;
  }

  private static Map<Kind, List<Profile.Alias>> columns(Map<String, Map<String, SaidColumn>> said) {
    Map<Kind, List<Profile.Alias>> columns = new EnumMap<>(Kind.class);
    said.forEach(
        (code, byName) -> {
          Kind kind =
              Kind.find(code)
                  .orElseThrow(() -> new IllegalArgumentException("columns: no kind " + code));
          List<Profile.Alias> aliases = new ArrayList<>();
          byName.forEach((name, column) -> aliases.add(alias(name, column)));
          columns.put(kind, aliases);
        });
    return columns;
  }

  private static Profile.Alias alias(String name, SaidColumn said) {
    return new Profile.Alias(
        name,
        said.aliases() == null ? List.of() : said.aliases(),
        said.patterns() == null
            ? List.of()
            : said.patterns().stream()
                .map(pattern -> Pattern.compile(pattern, Pattern.CASE_INSENSITIVE))
                .toList(),
        said.measure() == null ? null : Measure.of(said.measure()));
  }

  private static Map<String, Map<String, String>> values(Map<String, Map<String, String>> said) {
    Map<String, Map<String, String>> values = new HashMap<>();
    said.forEach(
        (list, synonyms) -> {
          Map<String, String> lower = new HashMap<>();
          synonyms.forEach((word, code) -> lower.put(word.toLowerCase(Locale.ROOT), code));
          values.put(list, lower);
        });
    return values;
  }
}
