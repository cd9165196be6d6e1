package coldround.benchmark;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The entries and sections of a TSPLIB file (Reinelt, "TSPLIB 95") in any order, not yet
 * understood.
 */
final class TsplibSections {

  /** A word of a section with its line. */
  record Token(String text, int line) {
    double number() {
      return RoutingFile.number(text, line);
    }

    int whole() {
      return RoutingFile.whole(text, line);
    }
  }

  private final Map<String, String> entries = new HashMap<>();
  private final Map<String, List<Token>> sections = new HashMap<>();

  static TsplibSections of(List<String> lines) {
    TsplibSections file = new TsplibSections();
    List<Token> open = null;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).trim();
      String word = line.split("[\\s:]+", 2)[0].toUpperCase(Locale.ROOT);
      if (line.isEmpty()) {
        continue;
      }
      if (word.equals("EOF")) {
        break;
      }
      if (word.endsWith("_SECTION")) {
        open = file.sections.computeIfAbsent(word, w -> new ArrayList<>());
        file.words(open, line.substring(word.length()).replace(":", " ").trim(), i + 1);
      } else if (Character.isLetter(word.charAt(0)) && !isNumber(word)) {
        file.remember(word, line);
        open = null;
      } else if (open != null) {
        file.words(open, line, i + 1);
      } else {
        throw new IllegalArgumentException("line " + (i + 1) + " belongs to no section: " + line);
      }
    }
    return file;
  }

  private static boolean isNumber(String word) {
    return word.equals("INF") || word.equals("NAN");
  }

  private void remember(String word, String line) {
    String value = line.substring(word.length()).trim();
    entries.put(word, value.startsWith(":") ? value.substring(1).trim() : value);
  }

  private void words(List<Token> section, String line, int number) {
    for (String word : line.split("\\s+")) {
      if (!word.isEmpty()) {
        section.add(new Token(word, number));
      }
    }
  }

  String entry(String name, String fallback) {
    String value = entries.getOrDefault(name, "");
    return value.isEmpty() ? fallback : value;
  }

  boolean hasEntry(String name) {
    return !entries.getOrDefault(name, "").isEmpty();
  }

  double number(String name) {
    String value = entry(name, null);
    if (value == null) {
      throw new IllegalArgumentException("the entry " + name + " is missing");
    }
    try {
      return Double.parseDouble(value);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("the entry " + name + " is not a number: " + value, e);
    }
  }

  boolean hasSection(String name) {
    return sections.containsKey(name);
  }

  List<Token> section(String name) {
    if (!hasSection(name)) {
      throw new IllegalArgumentException("the section " + name + " is missing");
    }
    return sections.get(name);
  }

  /** Rows of a section by the node number in front, each with so many values behind. */
  Map<Integer, double[]> rows(String name, int values) {
    List<Token> tokens = section(name);
    int width = values + 1;
    if (tokens.size() % width != 0) {
      throw new IllegalArgumentException(
          name + " has " + tokens.size() + " numbers, which is not a multiple of " + width);
    }
    Map<Integer, double[]> rows = new HashMap<>();
    for (int i = 0; i < tokens.size(); i += width) {
      double[] row = new double[values];
      for (int j = 0; j < values; j++) {
        row[j] = tokens.get(i + 1 + j).number();
      }
      if (rows.put(tokens.get(i).whole(), row) != null) {
        throw new IllegalArgumentException(
            "line " + tokens.get(i).line() + ": node " + tokens.get(i).text() + " comes twice");
      }
    }
    return rows;
  }
}
