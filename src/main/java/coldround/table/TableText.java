package coldround.table;

import coldround.sheet.Dialect;
import coldround.sheet.SheetReader;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;

/**
 * The text of a rule table as spreadsheet programs save it: UTF-8 or Windows-1252, comma, semicolon
 * or tab, whichever its first line has most of.
 */
final class TableText {

  private static final List<String> DELIMITERS = List.of(",", ";", "\t");
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private TableText() {}

  static SheetReader read(byte[] bytes) {
    String text = decoded(bytes);
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    return SheetReader.of(new StringReader(plain), Dialect.STANDARD.delimitedBy(delimiter(plain)));
  }

  private static String decoded(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  private static String delimiter(String text) {
    String header = text.lines().findFirst().orElse("");
    return DELIMITERS.stream()
        .max(Comparator.comparingLong(delimiter -> header.split(delimiter, -1).length))
        .orElseThrow();
  }
}
