package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.opencsv.CSVWriterBuilder;
import com.opencsv.ICSVWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;

/** What OpenCSV or we write reads back equal; what anybody writes is read or refused in time. */
class RoundTripTest {

  private static final List<String> LABELS =
      List.of("tag", "site", "installed", "charge", "note", "link", "serial", "price");

  /** Any characters at all, those with a meaning in CSV more often. */
  @Provide
  Arbitrary<List<List<String>>> anyTables() {
    Arbitrary<String> cell =
        Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(
                    3, Arbitraries.strings().withChars(",;\t|\"'\n \\=-a1é").ofMaxLength(8)),
                net.jqwik.api.Tuple.of(
                    1, Arbitraries.strings().all().excludeChars('\0', '\uFFFD').ofMaxLength(8)))
            .map(s -> s.replace("\r", ""))
            .filter(RoundTripTest::isEncodable);
    return Arbitraries.integers()
        .between(2, 6)
        .flatMap(width -> cell.list().ofSize(width).list().ofMinSize(1).ofMaxSize(8));
  }

  private static boolean isEncodable(String text) {
    return StandardCharsets.UTF_8.newEncoder().canEncode(text);
  }

  @Property(tries = 400)
  void anyTableWrittenByOpenCsvReadsBackEqualInItsDialect(
      @ForAll("anyTables") List<List<String>> table, @ForAll("delimiters") char delimiter) {
    Dialect dialect = Dialect.STANDARD.delimitedBy(String.valueOf(delimiter));
    String text = written(table, delimiter, "\n", true);
    List<List<String>> read = new ArrayList<>();
    try (SheetReader reader = SheetReader.of(new StringReader(text), dialect)) {
      reader.forEachRemaining(row -> read.add(row.cells()));
    }
    assertEquals(table, read);
  }

  @Property(tries = 400)
  void anyTableWrittenByUsReadsBackEqual(
      @ForAll("anyTables") List<List<String>> table, @ForAll boolean guarded) {
    StringWriter text = new StringWriter();
    SheetWriter writer = guarded ? SheetWriter.guarded(text) : SheetWriter.plain(text);
    table.forEach(writer::write);
    List<List<String>> read = new ArrayList<>();
    try (SheetReader reader = SheetReader.standard(new StringReader(text.toString()))) {
      reader.forEachRemaining(
          row ->
              read.add(
                  guarded ? row.cells().stream().map(FormulaGuard::undo).toList() : row.cells()));
    }
    assertEquals(table, read);
  }

  @Provide
  Arbitrary<Character> delimiters() {
    return Arbitraries.of(',', ';', '\t', '|');
  }

  @Provide
  Arbitrary<Charset> charsets() {
    return Arbitraries.of("UTF-8", "UTF-16LE", "UTF-16BE", "windows-1252", "ISO-8859-1")
        .map(Charset::forName);
  }

  /** Rows as lists of equipment have them, every column of one kind. */
  @Provide
  Arbitrary<List<List<String>>> likelyTables() {
    Arbitrary<Integer> number = Arbitraries.integers().between(0, 9999);
    Arbitrary<String> word =
        Arbitraries.strings().withCharRange('a', 'z').ofMinLength(2).ofMaxLength(9);
    Arbitrary<String> sign =
        Arbitraries.of(" ", ", ", "; ", " \"", "\" ", " - ", "/", "'s ", " é", "\n", " | ");
    Arbitrary<String> note =
        Combinators.combine(word, sign, word, word).as((a, s, b, c) -> a + " " + b + s + c);
    Arbitrary<List<String>> row =
        Combinators.combine(number, word, number, note, Arbitraries.of(true, false), number)
            .as(
                (n, w, m, text, empty, p) ->
                    List.of(
                        "U-" + n,
                        w,
                        String.format(
                            Locale.ROOT, "20%02d-%02d-%02d", m % 25, 1 + m % 12, 1 + m % 28),
                        String.format(Locale.ROOT, "%.2f", m / 100.0),
                        empty ? "" : text,
                        "https://example.com/" + w,
                        String.format("%05d", p),
                        String.valueOf(p)));
    return row.list().ofMinSize(4).ofMaxSize(30);
  }

  @Property(tries = 300)
  void aLikelyTableReadsBackEqualWithNothingGiven(
      @ForAll("likelyTables") List<List<String>> table,
      @ForAll("delimiters") char delimiter,
      @ForAll("charsets") Charset charset,
      @ForAll boolean mark,
      @ForAll boolean allQuoted,
      @ForAll boolean crlf) {
    List<List<String>> whole = new ArrayList<>(List.of(LABELS));
    whole.addAll(table);
    String text = written(whole, delimiter, crlf ? "\r\n" : "\n", allQuoted);
    boolean marked = mark && charset.name().startsWith("UTF");
    Sheet sheet = Sheets.open(((marked ? "\uFEFF" : "") + text).getBytes(charset));
    assertEquals(LABELS, sheet.layout().labels());
    List<Row> rows = Sheets.rows(sheet);
    assertEquals(table, rows.stream().map(Row::cells).toList());
    assertTrue(rows.stream().allMatch(row -> row.faults().isEmpty()));
  }

  @Property(tries = 500)
  void anyBytesGiveRowsOrARefusalInTime(@ForAll @Size(max = 3000) byte[] bytes) {
    readOrRefuse(bytes);
  }

  @Provide
  Arbitrary<String> soups() {
    return Arbitraries.strings().withChars(",;\t|\"'\\\r\n\0 #=a1é\u001a\uFEFF").ofMaxLength(4000);
  }

  @Property(tries = 500)
  void anySoupOfSignsGivesRowsOrARefusalInTime(@ForAll("soups") String soup) {
    readOrRefuse(soup.getBytes(StandardCharsets.UTF_8));
  }

  @Property(tries = 200)
  void aSpoiltTableGivesRowsOrARefusalInTime(
      @ForAll("likelyTables") List<List<String>> table, @ForAll("soups") String soup) {
    String text = written(table, ',', "\n", false);
    int at = soup.length() % (text.length() + 1);
    readOrRefuse(
        (text.substring(0, at) + soup + text.substring(at)).getBytes(StandardCharsets.UTF_8));
  }

  private static void readOrRefuse(byte[] bytes) {
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          try (Sheet sheet = Sheets.open(bytes)) {
            long last = 0;
            for (Iterator<Row> rows = sheet.rows(); rows.hasNext(); ) {
              Row row = rows.next();
              assertTrue(row.line() > last, "rows come in the order of their lines");
              last = row.line();
            }
            assertTrue(last <= bytes.length + 1);
          } catch (NotASheet refusal) {
            assertTrue(!refusal.mend().isBlank());
          }
        });
  }

  /** Cells without quotes where they need none, so that quotes are no hint by themselves. */
  private static String written(
      List<List<String>> table, char delimiter, String lineEnd, boolean allQuoted) {
    StringWriter out = new StringWriter();
    ICSVWriter writer =
        new CSVWriterBuilder(out).withSeparator(delimiter).withLineEnd(lineEnd).build();
    table.forEach(row -> writer.writeNext(row.toArray(new String[0]), allQuoted));
    return out.toString();
  }
}
