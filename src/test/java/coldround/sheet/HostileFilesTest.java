package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.sheet.NotASheet.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is no table is refused by name; what is wrong in one row is said of that row. */
class HostileFilesTest {

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "empty file,            '',                                 EMPTY",
    "only a mark,           efbbbf,                             EMPTY",
    "only line ends,        0d0a0d0a,                           EMPTY",
    "damaged zip,           504b0304140006000000,               UNREADABLE_WORKBOOK",
    "old workbook,          d0cf11e0a1b11ae1,                   OLD_WORKBOOK",
    "gzip,                  1f8b0800000000000003,               COMPRESSED",
    "PDF,                   255044462d312e37,                   DOCUMENT",
    "PNG,                   89504e470d0a1a0a,                   DOCUMENT",
    "web page,              3c68746d6c3e3c626f64793e,           WEB_PAGE",
    "XML,                   3c3f786d6c2076657273696f6e3d,       MARKUP",
    "JSON,                  5b7b2261223a20317d5d,               JSON",
    "UTF-32,                fffe00006100000062000000,           UNSUPPORTED_CHARSET",
    "machine code,          7f454c4602010100000000000102030405, BINARY"
  })
  void bytesThatAreNoTableAreRefusedByName(String name, String hex, Reason reason) {
    byte[] bytes = HexFormat.of().parseHex(hex);
    NotASheet refusal = assertThrows(NotASheet.class, () -> Sheets.open(bytes));
    assertEquals(reason, refusal.reason());
    assertFalse(refusal.mend().isBlank());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "NUL,                  55312c4e756c0073746f7265, NUL_CHARACTER",
    "bytes outside UTF-8,  55312c42616420fffe206e,   UNDECODABLE"
  })
  void aRowWithForeignBytesIsNamedAndTheOthersLoad(String name, String hex, Fault.Code code) {
    byte[] row = HexFormat.of().parseHex(hex);
    byte[] head = "tag,site\n".getBytes(StandardCharsets.UTF_8);
    byte[] tail = "\nU2,Good\n".getBytes(StandardCharsets.UTF_8);
    byte[] all = new byte[head.length + row.length + tail.length];
    System.arraycopy(head, 0, all, 0, head.length);
    System.arraycopy(row, 0, all, head.length, row.length);
    System.arraycopy(tail, 0, all, head.length + row.length, tail.length);
    List<Row> rows = Sheets.rows(Sheets.open(all));
    assertEquals(List.of(code), rows.get(0).faults().stream().map(Fault::code).toList());
    assertFalse(rows.get(0).isReliable());
    assertEquals(new Row(3, List.of("U2", "Good")), rows.get(1));
  }

  @Test
  void textTakenForLatin1OnItsWayIsReadAsItWasMeant() {
    assertEquals(
        List.of(List.of("A1", "2 – 3 m"), List.of("A2", "it’s")),
        Sheets.cells(Sheets.open("tag,note\nA1,2 \u0096 3 m\nA2,it\u0092s\n")));
  }

  @Test
  void aLineWithoutEndIsRefusedInBoundedMemoryAndTheNextRowsLoad() throws IOException {
    try (Sheet sheet = Sheet.open(new Repeated("tag,note\nA1,x\nA2,", "yyyyyyyyyy", 5_000_000))) {
      assertEquals(List.of("A1", "x"), sheet.rows().next().cells());
      Row tooLong = sheet.rows().next();
      assertEquals(Fault.Code.RECORD_TOO_LONG, tooLong.faults().get(0).code());
      assertTrue(tooLong.cells().get(0).length() < 2000);
      assertFalse(sheet.rows().hasNext());
    }
  }

  @Test
  void anUnclosedQuoteCostsOneRowOfAMillion() {
    assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          InputStream in = new Repeated("tag,note\nA1,\"never closed\n", "A2,fine\n", 1_000_000);
          try (Sheet sheet = Sheet.open(in)) {
            Iterator<Row> rows = sheet.rows();
            assertEquals(List.of("A1", "\"never closed"), rows.next().cells());
            long good = 0;
            while (rows.hasNext()) {
              good += rows.next().faults().isEmpty() ? 1 : 0;
            }
            assertEquals(1_000_000, good);
          }
        });
  }

  @Test
  void aStrayQuoteInEveryRowStaysCheap() {
    assertTimeoutPreemptively(
        Duration.ofSeconds(120),
        () -> {
          InputStream in = new Repeated("tag,note,kg\n", "A2,\"pipe,4\n", 300_000);
          try (Sheet sheet = Sheet.open(in)) {
            long rows = 0;
            for (Iterator<Row> all = sheet.rows(); all.hasNext(); all.next()) {
              rows++;
            }
            assertEquals(300_000, rows);
          }
        });
  }

  @ParameterizedTest
  @CsvSource({"','", "'x,'", "'\"'", "'\"\",'", "',\"x'", "'a b '", "';,'"})
  void longRowsThatFitNowhereStayCheap(String part) {
    String row = part.repeat(6000) + "\n";
    assertTimeoutPreemptively(
        Duration.ofSeconds(120),
        () -> {
          InputStream in = new Repeated("tag,note,kg\nA1,x,4\nA2,y,5\nA3,z,6\n", row, 300);
          try (Sheet sheet = Sheet.open(in)) {
            sheet.rows().forEachRemaining(r -> assertTrue(r.line() > 0));
          }
        });
  }
}
