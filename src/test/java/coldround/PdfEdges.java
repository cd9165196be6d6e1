package coldround;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** How far to the right the text of a PDF goes: what goes over the margin is cut off in print. */
public final class PdfEdges extends PDFTextStripper {

  /** 15 mm in points. */
  private static final float MARGIN = 42.5f;

  private float right;

  private PdfEdges() {}

  /** In points from the left edge of the page, the greatest of all pages. */
  private static float right(PDDocument document) throws IOException {
    PdfEdges edges = new PdfEdges();
    edges.getText(document);
    return edges.right;
  }

  /** All pages are of that size, and no text goes over their margin of 15 mm. */
  public static void check(PDDocument document, double widthMm, double heightMm)
      throws IOException {
    for (PDPage page : document.getPages()) {
      PDRectangle paper = page.getMediaBox();
      assertEquals(widthMm, paper.getWidth() / 72 * 25.4, 0.3, "width in mm");
      assertEquals(heightMm, paper.getHeight() / 72 * 25.4, 0.3, "height in mm");
    }
    float right = right(document);
    float most = document.getPage(0).getMediaBox().getWidth() - MARGIN;
    // a glyph's box is a little wider than its ink
    assertTrue(right <= most + 1, "text goes to " + right + " of " + most + " points");
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
