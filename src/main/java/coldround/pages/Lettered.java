package coldround.pages;

import coldround.pages.RouteSheet.Caution;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The cautions of a sheet in the order in which they are met, each with a letter: A to Z, AA … */
final class Lettered {

  private static final int LETTERS = 26;

  private final Map<String, String> letters = new LinkedHashMap<>();

  /** Its letter; a text that was met before keeps its own. */
  String of(String caution) {
    return letters.computeIfAbsent(caution, text -> letter(letters.size()));
  }

  private static String letter(int number) {
    String last = String.valueOf((char) ('A' + number % LETTERS));
    return number < LETTERS ? last : letter(number / LETTERS - 1) + last;
  }

  List<Caution> all() {
    return letters.entrySet().stream()
        .map(each -> new Caution(each.getValue(), each.getKey()))
        .toList();
  }
}
