package coldround.intake.edge;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A workbook with nothing but text cells, in the fewest parts that ECMA-376 allows. */
final class TinyWorkbook {

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String PACKAGE =
      "http://schemas.openxmlformats.org/package/2006/relationships";
  private static final String TYPES =
      "http://schemas.openxmlformats.org/package/2006/content-types";
  private static final String SHEET =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.";

  private TinyWorkbook() {}

  /**
   * @param sheets rows with cells by commas, by name of the sheet
   */
  static byte[] of(Map<String, List<String>> sheets) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      StringBuilder types = new StringBuilder();
      StringBuilder names = new StringBuilder();
      StringBuilder relations = new StringBuilder();
      int number = 0;
      for (Map.Entry<String, List<String>> sheet : sheets.entrySet()) {
        number++;
        String file = "sheet" + number + ".xml";
        types.append(override("/xl/" + file, "worksheet+xml"));
        names.append(
            "<sheet name='%s' sheetId='%d' r:id='rId%2$d'/>".formatted(sheet.getKey(), number));
        relations.append(relation(number, "worksheet", file));
        part(zip, "xl/" + file, cells(sheet.getValue()));
      }
      part(
          zip,
          "[Content_Types].xml",
          "<Types xmlns='%s'><Default Extension='rels' ContentType='application/vnd.openxmlformats-package.relationships+xml'/>%s%s</Types>"
              .formatted(TYPES, override("/xl/workbook.xml", "sheet.main+xml"), types));
      part(zip, "_rels/.rels", relations(relation(1, "officeDocument", "xl/workbook.xml")));
      part(
          zip,
          "xl/workbook.xml",
          "<workbook xmlns='%s' xmlns:r='%s'><sheets>%s</sheets></workbook>"
              .formatted(MAIN, OFFICE, names));
      part(zip, "xl/_rels/workbook.xml.rels", relations(relations.toString()));
    }
    return bytes.toByteArray();
  }

  private static String override(String part, String type) {
    return "<Override PartName='" + part + "' ContentType='" + SHEET + type + "'/>";
  }

  private static String relations(String inner) {
    return "<Relationships xmlns='" + PACKAGE + "'>" + inner + "</Relationships>";
  }

  private static String relation(int id, String type, String target) {
    return "<Relationship Id='rId%d' Type='%s/%s' Target='%s'/>"
        .formatted(id, OFFICE, type, target);
  }

  private static String cells(List<String> rows) {
    StringBuilder text = new StringBuilder("<worksheet xmlns='" + MAIN + "'><sheetData>");
    for (int row = 1; row <= rows.size(); row++) {
      text.append("<row r='").append(row).append("'>");
      char column = 'A';
      for (String cell : rows.get(row - 1).split(",", -1)) {
        text.append(
            "<c r='%c%d' t='inlineStr'><is><t>%s</t></is></c>".formatted(column++, row, cell));
      }
      text.append("</row>");
    }
    return text.append("</sheetData></worksheet>").toString();
  }

  private static void part(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(text.getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }
}
