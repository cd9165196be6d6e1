package coldround.pages;

import coldround.quantity.Measure;
import java.text.DecimalFormatSymbols;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Puts the decimal sign and the sign between thousands of a reader's language into the numbers of a
 * finished page. Only what is plainly a number of ours changes: one with its unit of measure, one
 * that stands alone, one between thousands; an amount of money gets its thousands told apart. What
 * people typed, sources and codes stay as they are.
 */
public final class ReaderNumbers {

  private static final Pattern TAG = Pattern.compile("<(?:[^<>\"']|\"[^\"]*\"|'[^']*')*>");
  private static final Pattern SPOKEN = Pattern.compile("( (?:aria-label|title)=\")([^\"]*)\"");
  private static final Pattern CLASS = Pattern.compile(" class=\"([^\"]*)\"");
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\w.,:/§-])([+-]?)(\\d{1,3}(?:,\\d{3})+|\\d+)(\\.\\d+)?(?![\\w]|[.,/:-]\\d)");
  private static final Pattern ALONE =
      Pattern.compile("\\s*(?:&minus;|[+\\u2212-])?[\\d,]+\\.\\d+\\s*");
  private static final Pattern BEHIND = behind();
  // ISO 4217
  private static final String CURRENCY =
      Currency.getAvailableCurrencies().stream()
          .map(Currency::getCurrencyCode)
          .sorted()
          .collect(Collectors.joining("|", "[ \\u00a0](?:", ")(?!\\w)"));
  private static final Pattern MONEY = Pattern.compile(CURRENCY);
  private static final Pattern AMOUNT = Pattern.compile("\\d{4}(?:\\.\\d+)?" + CURRENCY);
  private static final Pattern THOUSAND = Pattern.compile("(?<=\\d)(?=(?:\\d{3})+$)");
  private static final List<String> BEFORE_THE_LAST = List.of(": ", " to ");
  private static final String EXPONENT = "exponent ";
  private static final Set<String> AS_TYPED =
      Set.of("script", "style", "textarea", "code", "pre", "option");
  private static final Set<String> OF_OTHERS = Set.of("source", "note", "theirs");

  private final char decimal;
  private final char thousands;

  private ReaderNumbers(char decimal, char thousands) {
    this.decimal = decimal;
    this.thousands = thousands;
  }

  public static ReaderNumbers of(Locale language) {
    DecimalFormatSymbols signs = DecimalFormatSymbols.getInstance(language);
    return signs.getDecimalSeparator() == ','
        ? new ReaderNumbers(',', signs.getGroupingSeparator())
        : new ReaderNumbers('.', ',');
  }

  /**
   * The language that a reader likes best; English where nothing is said.
   *
   * @param acceptable as the browser tells them, the best first
   */
  public static Locale language(List<Locale> acceptable) {
    Locale first = acceptable.isEmpty() ? Locale.ROOT : acceptable.get(0);
    // "any" comes as an asterisk or, where a browser sends one, as no language
    return Set.of("", "*").contains(first.getLanguage()) ? Locale.ENGLISH : first;
  }

  // what stands behind a number that makes it ours: a unit of measure, a currency, a word of these
  // pages
  private static Pattern behind() {
    String labels =
        Stream.concat(
                Measure.all().stream().map(Measure::label), Stream.of("%", "&deg;F", "&deg;C"))
            .filter(label -> !label.isEmpty())
            .distinct()
            .sorted(Comparator.comparing(String::length).reversed())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    return Pattern.compile(
        ("[ \\u00a0]?(?:(?:%s|[A-Z]{3}|times|points?|possible|open|fewer|a unit|are"
                + " expected|days?|years?|visits?|faults?|h)(?!\\w)|of 100|of \\d+ lost|on \\d|in \\d{4}|to [+-]?\\d|to"
                + " [a-z]|, (?:visit|worked|shown|left))")
            .formatted(labels));
  }

  /** True when the language writes numbers as the pages do anyway. */
  public boolean plain() {
    return decimal == '.' && thousands == ',';
  }

  public char decimal() {
    return decimal;
  }

  /** The page with its numbers as the reader writes them. */
  public String page(String html) {
    if (plain() && !AMOUNT.matcher(html).find()) {
      return html;
    }
    StringBuilder out = new StringBuilder(html.length() + 64);
    Skip skip = new Skip();
    Matcher tags = TAG.matcher(html);
    int from = 0;
    while (tags.find()) {
      String text = html.substring(from, tags.start());
      out.append(skip.on() ? text : text(text));
      String tag = tags.group();
      skip.met(tag);
      out.append(skip.on() ? tag : spoken(tag));
      from = tags.end();
    }
    return out.append(html, from, html.length()).toString();
  }

  private String spoken(String tag) {
    return SPOKEN
        .matcher(tag)
        .replaceAll(found -> Matcher.quoteReplacement(found.group(1) + text(found.group(2)) + '"'));
  }

  /** The numbers of a text between two tags. */
  String text(String text) {
    boolean alone = ALONE.matcher(text).matches();
    return NUMBER
        .matcher(text)
        .replaceAll(
            found ->
                Matcher.quoteReplacement(
                    money(found, text)
                        ? written(found, THOUSAND.matcher(found.group(2)).replaceAll(","))
                        : ours(found, text, alone)
                            ? written(found, found.group(2))
                            : found.group()));
  }

  private static boolean money(MatchResult number, String text) {
    return MONEY.matcher(text).region(number.end(), text.length()).lookingAt();
  }

  private static boolean ours(MatchResult number, String text, boolean alone) {
    if (number.group(3) == null) {
      return number.group(2).indexOf(',') >= 0;
    }
    boolean last = number.end() == text.length();
    return alone
        || last && BEFORE_THE_LAST.stream().anyMatch(text.substring(0, number.start())::endsWith)
        || text.startsWith(EXPONENT, number.start() - EXPONENT.length())
        || BEHIND.matcher(text).region(number.end(), text.length()).lookingAt();
  }

  private String written(MatchResult number, String grouped) {
    String whole = grouped.replace(',', thousands);
    String rest = number.group(3) == null ? "" : decimal + number.group(3).substring(1);
    return number.group(1) + whole + rest;
  }

  /** Whether the place in the page is inside of what stays as it is. */
  private static final class Skip {
    private String element = "";
    private int depth;

    boolean on() {
      return depth > 0;
    }

    void met(String tag) {
      boolean end = tag.startsWith("</");
      String name = tag.substring(end ? 2 : 1).split("[\\s>/]", 2)[0];
      if (depth > 0) {
        boolean same = name.equals(element) && !tag.endsWith("/>");
        depth += same ? (end ? -1 : 1) : 0;
      } else if (!end && !tag.endsWith("/>") && (AS_TYPED.contains(name) || ofOthers(tag))) {
        element = name;
        depth = 1;
      }
    }

    private static boolean ofOthers(String tag) {
      Matcher classes = CLASS.matcher(tag);
      return classes.find()
          && List.of(classes.group(1).split("\\s+")).stream().anyMatch(OF_OTHERS::contains);
    }
  }
}
