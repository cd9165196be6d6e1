package coldround;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** How far to the right the text of a PDF goes: what goes over the margin is cut off in print. */
public final class PdfEdges extends PDFTextStripper {

  private float right;

  private PdfEdges() {}

  /** In points from the left edge of the page, the greatest of all pages. */
  public static float right(PDDocument document) throws IOException {
    PdfEdges edges = new PdfEdges();
    edges.getText(document);
    return edges.right;
  }

  @Override
  protected void writeString(String text, List<TextPosition> glyphs) {
    for (TextPosition glyph : glyphs) {
      if (!glyph.getUnicode().isBlank()) {
        right = Math.max(right, glyph.getXDirAdj() + glyph.getWidthDirAdj());
      }
    }
  }
}
