package coldround.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;

/** Writes rows as RFC 4180 text: comma, double quote, CRLF. */
public final class SheetWriter implements AutoCloseable {

  private final Writer out;
  private final boolean guarded;

  private SheetWriter(Writer out, boolean guarded) {
    this.out = out;
    this.guarded = guarded;
  }

  /** For people who will open the file in a spreadsheet program: no cell can act as a formula. */
  public static SheetWriter guarded(Writer out) {
    return new SheetWriter(out, true);
  }

  /** For programs: every cell as it is. */
  public static SheetWriter plain(Writer out) {
    return new SheetWriter(out, false);
  }

  public void write(List<String> cells) {
    try {
      for (int i = 0; i < cells.size(); i++) {
        if (i > 0) {
          out.write(',');
        }
        writeCell(cells.get(i), cells.size() == 1);
      }
      out.write("\r\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void writeCell(String cell, boolean alone) throws IOException {
    String safe = guarded ? FormulaGuard.guard(cell) : cell;
    if (needsQuotes(safe) || (alone && safe.isEmpty())) {
      out.write('"');
      out.write(safe.replace("\"", "\"\""));
      out.write('"');
    } else {
      out.write(safe);
    }
  }

  private static boolean needsQuotes(String cell) {
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == ',' || c == '"' || c == '\n' || c == '\r') {
        return true;
      }
    }
    return false;
  }

  @Override
  public void close() {
    try {
      out.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
