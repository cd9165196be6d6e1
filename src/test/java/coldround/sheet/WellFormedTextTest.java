package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rules of RFC 4180 section 2, and the cases the public suites csv-spectrum, csv-test-data and
 * the tests of Apache Commons CSV check, with content of our own. In the text, {@code ~} is a
 * quote, {@code ^} LF, {@code %} CR; in what is expected, {@code /} parts rows and {@code |} cells.
 */
class WellFormedTextTest {

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '\'',
      value = {
        "CRLF,                         'a,b%^1,2%^',              'a|b/1|2'",
        "LF,                           'a,b^1,2^',                'a|b/1|2'",
        "CR,                           'a,b%1,2%',                'a|b/1|2'",
        "line ends mixed,              'a,b%^1,2^3,4%5,6',        'a|b/1|2/3|4/5|6'",
        "last line not ended,          'a,b^1,2',                 'a|b/1|2'",
        "blanks are data,              'a,b^ 1 ,  ^',             'a|b/ 1 |  '",
        "comma in quotes,              'a,b^~1,5~,2^',            'a|b/1,5|2'",
        "all quoted,                   '~a~,~b~^~1~,~2~^',        'a|b/1|2'",
        "line break in quotes,         'a,b^~1^5~,2^',            'a|b/1^5|2'",
        "CRLF in quotes kept,          'a,b%^~1%^5~,2%^',         'a|b/1%^5|2'",
        "quote doubled,                'a,b^~say ~~hi~~~,2^',     'a|b/say ~hi~|2'",
        "only a quote,                 'a,b^~~~~,2^',             'a|b/~|2'",
        "empty in quotes,              'a,b,c^~~,,~~^',           'a|b|c/||'",
        "empty cells,                  'a,b,c^,,^',               'a|b|c/||'",
        "quoted at the end of a line,  'a,b%^1,~2~%^3,~4~',       'a|b/1|2/3|4'",
        "backslash is data,            'a,b^C:\\temp,~\\~^',      'a|b/C:\\temp|\\'",
        "letters beyond ASCII,         'a,b^ʤ,きち 😄^',           'a|b/ʤ|きち 😄'",
        "JSON in a cell,               'a,b^1,~{~~x~~: [1, 2]}~', 'a|b/1|{~x~: [1, 2]}'",
        "one column,                   'a^1^2',                   'a/1/2'",
        "comment sign is data,         '#a,b^#1,2',               '#a|b/#1|2'",
        "apostrophe is data,           'a,b^it''s,''x''',         'a|b/it''s|''x'''"
      })
  void isReadAsTheRfcHasIt(String name, String text, String expected) {
    List<String> rows = new ArrayList<>();
    try (SheetReader reader = SheetReader.standard(new StringReader(plain(text)))) {
      reader.forEachRemaining(row -> rows.add(String.join("|", row.cells())));
    }
    assertEquals(plain(expected), String.join("/", rows));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '\'',
      value = {
        "every row on a line,   'a,b^1,2^3,4',          '1 2 3'",
        "row over two lines,    'a,b^~1^x~,2^3,4',      '1 2 4'",
        "row over CRLF lines,   'a,b%^~1%^x~,2%^3,4',   '1 2 4'",
        "header over two lines, '~a^x~,b^1,2^3,4',      '1 3 4'",
        "CR only,               'a,b%~1%%x~,2%3,4',     '1 2 5'"
      })
  void everyRowSaysTheLineItStartsOn(String name, String text, String lines) {
    List<String> found = new ArrayList<>();
    try (SheetReader reader = SheetReader.standard(new StringReader(plain(text)))) {
      reader.forEachRemaining(row -> found.add(String.valueOf(row.line())));
    }
    assertEquals(lines, String.join(" ", found));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '\'',
      value = {
        "quote inside a plain cell,  'a,b^5~ pipe,2^3,4',        '5~ pipe|2',    STRAY_QUOTE",
        "text behind a closed quote, 'a,b^~x~y,2^3,4',           '~x~y|2',       UNCLOSED_QUOTE",
        "quote never closed,         'a,b^~x,2^3,4',             '~x|2',         UNCLOSED_QUOTE",
        "quote opened at the end,    'a,b^1,~^3,4',              '1|~',          UNCLOSED_QUOTE",
        "quote not doubled,          'a,b^~I missed ~ it~,2^3,4', 'I missed ~ it|2', STRAY_QUOTE"
      })
  void aMisplacedQuoteCostsItsOwnRowOnly(String name, String text, String cells, Fault.Code code)
      throws IOException {
    try (SheetReader reader = SheetReader.standard(new StringReader(plain(text)))) {
      assertEquals(List.of("a", "b"), reader.next().cells());
      Row spoilt = reader.next();
      assertEquals(plain(cells), String.join("|", spoilt.cells()));
      assertEquals(code, spoilt.faults().get(0).code());
      Row after = reader.next();
      assertEquals(List.of("3", "4"), after.cells());
      assertEquals(3, after.line());
    }
  }

  private static String plain(String written) {
    return written.replace('~', '"').replace('^', '\n').replace('%', '\r');
  }
}
