package coldround.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * docs/licences.md against what the build says the service is made of (target/bom.json, CycloneDX).
 * {@code mvn test -Dtest=LicencesTest -Dcoldround.publish=true} writes it.
 */
class LicencesTest {

  private static final Path LIST = Path.of("docs", "licences.md");

  /** Each lets an unmodified library be used and passed on with a program of another licence. */
  private static final Pattern TAKEN =
      Pattern.compile(
          "Apache-2\\.0|MIT(-0)?|BSD-[23]-Clause|EPL-[12]\\.0|EDL.*|MPL-2\\.0|UPL-1\\.0|CC0-1\\.0|0BSD"
              + "|LGPL-2\\.1.*|LGPL.*|GPL-2\\.0-with-classpath-exception|CDDL-1\\.[01]|ICU|Unlicense|.*Apache.*2\\.0.*|.*BSD.*|.*Public"
              + " Domain.*|.*MIT License.*|GPL2 w/ CPE");

  private static JsonNode made() throws IOException {
    Path bom = Path.of("target", "bom.json");
    assertTrue(
        Files.exists(bom), "the build writes target/bom.json before tests: mvn process-classes");
    return new ObjectMapper().readTree(bom.toFile());
  }

  private static List<String> licences(JsonNode component) {
    List<String> names = new ArrayList<>();
    for (JsonNode each : component.path("licenses")) {
      JsonNode licence = each.path("license");
      names.add(
          each.has("expression")
              ? each.get("expression").asText()
              : licence.path("id").asText(licence.path("name").asText()));
    }
    return names;
  }

  private static String name(JsonNode component) {
    return component.path("group").asText() + ":" + component.path("name").asText();
  }

  /** The native part of a library that is listed itself: another one on another machine. */
  private static boolean ofOneMachine(JsonNode component) {
    return component.path("name").asText().startsWith("native-");
  }

  @Test
  void theListIsWhatTheServiceIsMadeOf() throws IOException {
    TreeMap<String, String> rows = new TreeMap<>();
    for (JsonNode component : made().path("components")) {
      if (ofOneMachine(component)) {
        continue;
      }
      rows.put(
          name(component),
          "| %s | %s | %s |"
              .formatted(
                  name(component),
                  component.path("version").asText(),
                  String.join(" or ", new TreeSet<>(licences(component)))));
    }
    assertTrue(rows.size() > 50, "components " + rows.size());
    String list =
        """
        # What the service is made of

        Libraries of the packaged service and their licences, as the build knows them (`target/bom.json`, CycloneDX). All are used unmodified.
        Written by `mvn test -Dtest=LicencesTest -Dcoldround.publish=true`; the build fails while it is not so, or a licence is new.

        | library | version | licence |
        |---|---|---|
        """
            + String.join("\n", rows.values())
            + "\n";
    if (Boolean.getBoolean("coldround.publish")) {
      Files.writeString(LIST, list);
    }
    assertEquals(list, Files.readString(LIST));
  }

  @Test
  void everyLibraryHasALicenceThatMayBeTaken() throws IOException {
    List<String> others = new ArrayList<>();
    for (JsonNode component : made().path("components")) {
      if (licences(component).stream().noneMatch(name -> TAKEN.matcher(name).matches())) {
        others.add(name(component) + " " + licences(component));
      }
    }
    assertEquals(List.of(), others);
  }
}
