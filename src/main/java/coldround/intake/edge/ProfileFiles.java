package coldround.intake.edge;

import coldround.intake.Profile;
import coldround.table.RuleTables;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import io.quarkus.runtime.util.ClassPathUtils;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Reads the profiles of import/profiles: one YAML file each, those of the operator first. */
public final class ProfileFiles {

  private static final String FOLDER = "profiles";
  private static final String END = ".yaml";
  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY);

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
      Profile profile = YAML.readValue(text, ProfileDocument.class).profile();
      if (!file.equals(profile.name() + END)) {
        throw new IllegalArgumentException("the file of profile " + profile.name() + " is " + file);
      }
      profiles.add(profile);
    } catch (UnrecognizedPropertyException e) {
      String known = e.getKnownPropertyIds().toString();
      problem(file, 0, "there is no entry '" + e.getPropertyName() + "'; known are " + known);
    } catch (JsonMappingException e) {
      String place = e.getPath().stream().map(step -> "" + step.getFieldName()).toList().toString();
      problem(file, 0, "what stands at " + place + " has another form than in standard.yaml");
    } catch (JsonProcessingException e) {
      problem(file, e.getLocation().getLineNr(), e.getOriginalMessage());
    } catch (IllegalArgumentException e) {
      problem(file, 0, e.getMessage());
    }
  }

  private void problem(String file, long line, String message) {
    tables.problem(FOLDER + "/" + file, line, "", message.replace("\n", " "));
  }
}
