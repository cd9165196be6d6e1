package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldround.sheet.NotASheet.Reason;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** Workbooks written part by part as ECMA-376 part 1 has them, not by the library under test. */
class WorkbookTest {

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String PACKAGE =
      "http://schemas.openxmlformats.org/package/2006/relationships";

  private static final String UNITS =
      """
      <row r="1"><c r="A1" t="inlineStr"><is><t>Equipment list</t></is></c></row>
      <row r="3"><c r="A3" t="s"><v>0</v></c><c r="B3" t="s"><v>1</v></c><c r="C3" t="s"><v>2</v></c>
      <c r="D3" t="inlineStr"><is><t>ok</t></is></c><c r="E3" t="inlineStr"><is><t>note</t></is></c></row>
      <row r="4"><c r="A4" t="inlineStr"><is><t>00042</t></is></c><c r="B4"><v>3.7500000000000004</v></c>
      <c r="C4" s="1"><v>42125</v></c><c r="D4" t="b"><v>1</v></c></row>
      <row r="5"><c r="A5" t="inlineStr"><is><t>A-2</t></is></c><c r="B5"><f>2+2</f><v>4</v></c>
      <c r="C5" s="2"><v>42125.75</v></c><c r="D5" t="b"><v>0</v></c>
      <c r="E5" t="inlineStr"><is><t>=1+1</t></is></c></row>
      <row r="7"><c r="A7" t="inlineStr"><is><t>A-3</t></is></c><c r="B7"><v>120000000</v></c></row>
      """;

  private static final List<List<String>> EXPECTED =
      List.of(
          List.of("00042", "3.75", "2015-05-01", "true", ""),
          List.of("A-2", "4", "2015-05-01T18:00", "false", "=1+1"),
          List.of("A-3", "120000000", "", "", ""));

  @Test
  void aSheetIsReadByNameWithTitlesLeftOut() throws IOException {
    try (Workbook workbook = Workbook.open(new ByteArrayInputStream(workbook()))) {
      assertEquals(List.of("Empty", "Units"), workbook.sheetNames());
      Sheet sheet = workbook.sheet("Units");
      assertEquals(List.of("tag", "charge", "installed", "ok", "note"), sheet.layout().labels());
      List<Row> rows = Sheets.rows(sheet);
      assertEquals(EXPECTED, rows.stream().map(Row::cells).toList());
      assertEquals(List.of(4L, 5L, 7L), rows.stream().map(Row::line).toList());
    }
  }

  @Test
  void aWorkbookSentAsAnyFileIsOpenedAtItsFirstFilledSheet() throws IOException {
    try (Sheet sheet = Sheets.open(workbook())) {
      assertEquals(EXPECTED, Sheets.cells(sheet));
    }
  }

  @Test
  void aNameThatIsNotThereIsRefusedWithTheNamesThatAre() throws IOException {
    try (Workbook workbook = Workbook.open(new ByteArrayInputStream(workbook()))) {
      NotASheet refusal = assertThrows(NotASheet.class, () -> workbook.sheet("Unit"));
      assertEquals(Reason.NO_SUCH_SHEET, refusal.reason());
      assertEquals("Name one of [Empty, Units].", refusal.mend());
    }
  }

  @Test
  void aDamagedWorkbookIsRefused() throws IOException {
    byte[] bytes = workbook();
    byte[] half = java.util.Arrays.copyOf(bytes, bytes.length / 2);
    NotASheet refusal = assertThrows(NotASheet.class, () -> Sheets.open(half));
    assertEquals(Reason.UNREADABLE_WORKBOOK, refusal.reason());
  }

  private static byte[] workbook() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      part(zip, "[Content_Types].xml", contentTypes());
      part(zip, "_rels/.rels", relations(relation(1, "officeDocument", "xl/workbook.xml")));
      part(
          zip,
          "xl/workbook.xml",
          "<workbook xmlns=\"%s\" xmlns:r=\"%s\"><sheets>".formatted(MAIN, OFFICE)
              + "<sheet name=\"Empty\" sheetId=\"1\" r:id=\"rId1\"/>"
              + "<sheet name=\"Units\" sheetId=\"2\" r:id=\"rId2\"/></sheets></workbook>");
      part(
          zip,
          "xl/_rels/workbook.xml.rels",
          relations(
              relation(1, "worksheet", "worksheets/sheet1.xml")
                  + relation(2, "worksheet", "worksheets/sheet2.xml")
                  + relation(3, "sharedStrings", "sharedStrings.xml")
                  + relation(4, "styles", "styles.xml")));
      part(
          zip,
          "xl/sharedStrings.xml",
          "<sst xmlns=\"%s\"><si><t>tag</t></si><si><t>charge</t></si>".formatted(MAIN)
              + "<si><t>installed</t></si></sst>");
      part(zip, "xl/styles.xml", styles());
      part(zip, "xl/worksheets/sheet1.xml", sheet(""));
      part(zip, "xl/worksheets/sheet2.xml", sheet(UNITS));
    }
    return bytes.toByteArray();
  }

  private static String sheet(String rows) {
    return "<worksheet xmlns=\"%s\"><sheetData>%s</sheetData></worksheet>".formatted(MAIN, rows);
  }

  private static String styles() {
    return "<styleSheet xmlns=\"%s\">".formatted(MAIN)
        + "<numFmts count=\"1\"><numFmt numFmtId=\"164\" formatCode=\"dd/mm/yyyy\\ hh:mm\"/></numFmts>"
        + "<cellXfs count=\"3\"><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/><xf numFmtId=\"164\"/></cellXfs>"
        + "</styleSheet>";
  }

  private static String contentTypes() {
    String type = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
    return "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
        + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
        + "<Default Extension=\"xml\" ContentType=\"application/xml\"/>"
        + override("/xl/workbook.xml", type + "sheet.main+xml")
        + override("/xl/worksheets/sheet1.xml", type + "worksheet+xml")
        + override("/xl/worksheets/sheet2.xml", type + "worksheet+xml")
        + override("/xl/sharedStrings.xml", type + "sharedStrings+xml")
        + override("/xl/styles.xml", type + "styles+xml")
        + "</Types>";
  }

  private static String override(String part, String type) {
    return "<Override PartName=\"%s\" ContentType=\"%s\"/>".formatted(part, type);
  }

  private static String relations(String relations) {
    return "<Relationships xmlns=\"%s\">%s</Relationships>".formatted(PACKAGE, relations);
  }

  private static String relation(int id, String type, String target) {
    return "<Relationship Id=\"rId%d\" Type=\"%s/%s\" Target=\"%s\"/>"
        .formatted(id, OFFICE, type, target);
  }

  private static void part(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    String head = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
    zip.write((head + content).getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }
}
