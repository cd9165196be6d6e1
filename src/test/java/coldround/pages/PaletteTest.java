package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The colours of the style sheet in both lights. */
class PaletteTest {

  private static final Path SHEET =
      Path.of("src/main/resources/META-INF/resources/assets/coldround.css");

  /** What lies side by side in a score bar, in this order. */
  private static final List<String> BAR = List.of("kept", "age", "refrigerant", "coil", "faults");

  private static Map<String, String> colours(String light) throws IOException {
    String sheet = Files.readString(SHEET);
    int dark = sheet.indexOf("@media (prefers-color-scheme: dark)");
    Map<String, String> colours = read(sheet.substring(0, dark));
    if (light.equals("dark")) {
      colours.putAll(read(sheet.substring(dark, sheet.indexOf("* { box-sizing"))));
    }
    return colours;
  }

  private static Map<String, String> read(String block) {
    Map<String, String> colours = new HashMap<>();
    Matcher names = Pattern.compile("--([\\w-]+): (#[0-9a-f]{6});").matcher(block);
    while (names.find()) {
      colours.put(names.group(1), names.group(2));
    }
    return colours;
  }

  /** Relative luminance as WCAG 2.2 defines it. */
  private static double luminance(String colour) {
    double[] share = {0.2126, 0.7152, 0.0722};
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      sum += share[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  // WCAG 2.2: black on white has the contrast 21
  @Test
  void contrastIsThatOfTheStandard() {
    assertEquals(21, contrast("#000000", "#ffffff"), 1e-9);
    assertEquals(1, contrast("#0f6b70", "#0f6b70"), 1e-9);
  }

  // WCAG 2.2, 1.4.3 Contrast (Minimum): 4.5 for text
  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void wordsStandOutFromWhatTheyAreWrittenOn(String light) throws IOException {
    Map<String, String> colours = colours(light);
    for (String word : List.of("ink", "soft", "link", "alarm", "brass")) {
      for (String ground : List.of("frost", "card")) {
        double contrast = contrast(colours.get(word), colours.get(ground));
        assertTrue(contrast >= 4.5, word + " on " + ground + " in " + light + ": " + contrast);
      }
    }
    assertTrue(contrast(colours.get("ink"), colours.get("brass-face")) >= 4.5);
    assertTrue(contrast(colours.get("band-ink"), colours.get("band")) >= 4.5);
    assertTrue(contrast(colours.get("ink"), colours.get("metal-2")) >= 4.5);
  }

  // WCAG 2.2, 1.4.11 Non-text Contrast: 3 for the edges of controls
  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void edgesOfControlsStandOut(String light) throws IOException {
    Map<String, String> colours = colours(light);
    for (String ground : List.of("frost", "card")) {
      assertTrue(contrast(colours.get("edge"), colours.get(ground)) >= 3, ground + " in " + light);
      assertTrue(contrast(colours.get("focus"), colours.get(ground)) >= 3, ground + " in " + light);
    }
  }

  /**
   * Neighbours differ in lightness, so that the bar reads in grey and by every kind of colour
   * vision; the patterns and the words below do the rest. CIE 1976 L*; the least difference of 8 is
   * ours.
   */
  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void neighboursInABarDifferInGrey(String light) throws IOException {
    Map<String, String> colours = colours(light);
    for (int i = 1; i < BAR.size(); i++) {
      double left = lightness(colours.get(BAR.get(i - 1)));
      double right = lightness(colours.get(BAR.get(i)));
      String pair = BAR.get(i - 1) + " " + left + ", " + BAR.get(i) + " " + right;
      assertTrue(Math.abs(left - right) >= 8, pair + " in " + light);
    }
  }

  // CIE 1976 L* for Y over 0.008856
  private static double lightness(String colour) {
    return 116 * Math.cbrt(luminance(colour)) - 16;
  }
}
