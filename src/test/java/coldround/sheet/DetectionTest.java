package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.sheet.Dialect.Escape;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** One table written in every dialect we claim to know reads back equal, nothing given. */
class DetectionTest {

  private static final List<List<String>> TABLE = SampleTable.rows(30);

  record Written(String delimiter, String charset, String mark, String lineEnd, String quotes) {}

  static Stream<Written> dialects() {
    List<Written> all = new ArrayList<>();
    for (String delimiter : List.of(",", ";", "\t", "|", ", ", "||", "^", "~")) {
      for (String lineEnd : List.of("\r\n", "\n", "\r")) {
        for (String quotes : List.of("needed", "all", "apostrophe", "backslash")) {
          all.add(new Written(delimiter, "UTF-8", "", lineEnd, quotes));
        }
      }
      for (String charset : List.of("UTF-8", "UTF-16LE", "UTF-16BE")) {
        all.add(new Written(delimiter, charset, "\uFEFF", "\r\n", "needed"));
      }
      for (String charset : List.of("UTF-16LE", "UTF-16BE", "windows-1252", "ISO-8859-1")) {
        all.add(new Written(delimiter, charset, "", "\r\n", "needed"));
      }
    }
    return all.stream();
  }

  @ParameterizedTest
  @MethodSource("dialects")
  void aTableReadsBackEqualInEveryDialect(Written written) {
    StringBuilder text = new StringBuilder(written.mark);
    text.append(line(SampleTable.HEADER, written));
    TABLE.forEach(row -> text.append(line(row, written)));
    byte[] bytes = text.toString().getBytes(Charset.forName(written.charset));
    Sheet sheet = Sheets.open(bytes);
    assertEquals(SampleTable.HEADER, sheet.layout().labels());
    assertEquals(TABLE, Sheets.cells(sheet));
    assertEquals(!written.mark.isEmpty(), sheet.dialect().byteOrderMark());
    assertEquals(written.delimiter.strip(), sheet.dialect().delimiter().strip());
  }

  private static String line(List<String> row, Written written) {
    return String.join(written.delimiter, row.stream().map(c -> cell(c, written)).toList())
        + written.lineEnd;
  }

  private static String cell(String cell, Written written) {
    String delimiter = written.delimiter;
    return switch (written.quotes) {
      case "apostrophe" -> "'" + cell.replace("'", "''") + "'";
      case "all" -> '"' + cell.replace("\"", "\"\"") + '"';
      case "backslash" -> '"' + cell.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
      default -> {
        boolean special = cell.contains(delimiter.strip()) && !delimiter.isBlank();
        special |= cell.contains(delimiter) || cell.contains("\"");
        yield special ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
      }
    };
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '\'',
      delimiter = '!',
      value = {
        "decimal commas      ! 'tag;kg^A1;4,2^A2;3,75^A3;12,5'                      ! ;",
        "commas in text      ! 'tag;note^A1;worn, loose^A2;ok^A3;dirty, wet, old'   ! ;",
        "two columns         ! 'tag,kg^A1,4.2^A2,3.7'                               ! ,",
        "hint line           ! 'sep=|^tag|kg,x^A1|4,2^A2|3,1'                       ! |",
        "one column of text  ! 'note^the fan is loose^no fault found^door worn'     ! ,",
        "times of day        ! 'tag,from,to^A1,08:15,09:30^A2,10:00,11:45'          ! ,",
        "dates with blanks   ! 'tag;on^A1;2024-01-02 08:15^A2;2024-02-03 10:00'     ! ;"
      })
  void theDelimiterIsFoundAmongOtherSigns(String name, String text, String delimiter) {
    assertEquals(delimiter, Sheets.open(text.replace('^', '\n')).dialect().delimiter());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '~',
      delimiter = '!',
      value = {
        "apostrophes around two cells only ! a,b^1,'coil ok'^2,x^3,'fan ok'     ! DOUBLED   ! 'coil ok'",
        "doubled quotes                    ! a,b^1,\"5\"\" pipe\"^2,x           ! DOUBLED   ! 5\" pipe",
        "backslash before quotes           ! a,b^1,\"5\\\" pipe\"^2,C:\\temp    ! BACKSLASH ! 5\" pipe"
      })
  void theEscapeIsFoundFromItsUse(String name, String text, Escape escape, String cell) {
    Sheet sheet = Sheets.open(text.replace('^', '\n'));
    assertEquals(escape, sheet.dialect().escape());
    assertEquals(cell, Sheets.cells(sheet).get(0).get(1));
  }

  @ParameterizedTest
  @CsvSource({"UTF-8", "windows-1252", "UTF-16LE"})
  void aRowOfAFileLongerThanTheHeadIsReadInTheSameCharset(String charset) {
    StringBuilder text = new StringBuilder("tag,site\n");
    int rows = 120_000;
    for (int i = 0; i < rows; i++) {
      text.append("U-").append(i).append(",Café n° ").append(i % 10).append('\n');
    }
    List<List<String>> cells =
        Sheets.cells(Sheets.open(text.toString().getBytes(Charset.forName(charset))));
    assertEquals(rows, cells.size());
    assertTrue(cells.stream().allMatch(c -> c.get(1).startsWith("Café n° ")));
  }
}
