package coldround.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;

/** Reads a routing benchmark file, whatever its name: the content tells the format. */
final class RoutingFile {

  private static final Pattern ORIENTEERING = Pattern.compile("(?im)^\\s*tmax\\b");
  private static final Pattern TSPLIB = Pattern.compile("(?im)^\\s*(DIMENSION\\b|\\w+_SECTION\\b)");
  private static final Pattern TIME_WINDOWS = Pattern.compile("(?im)^\\s*(CUST\\w*|CUSTOMERS?)\\b");

  private RoutingFile() {}

  static RoutingInstance read(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new IllegalArgumentException(file + ": there is no such file");
    }
    String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
    try {
      return read(text, nameOf(file));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(file.getFileName() + ": " + e.getMessage(), e);
    }
  }

  /** Reads the text of a file; the name serves where the text has none. */
  static RoutingInstance read(String text, String name) {
    List<String> lines =
        text.replace("\uFEFF", "").replace("\u00EF\u00BB\u00BF", "").lines().toList();
    if (ORIENTEERING.matcher(text).find()) {
      return OrienteeringReader.read(lines, name);
    }
    if (TSPLIB.matcher(text).find()) {
      return new TsplibReader(TsplibSections.of(lines), name).read();
    }
    if (TIME_WINDOWS.matcher(text).find()) {
      return TimeWindowReader.read(lines, name);
    }
    throw new IllegalArgumentException(
        "neither a Solomon or Gehring-Homberger file, nor TSPLIB, nor team orienteering");
  }

  private static String nameOf(Path file) {
    return file.getFileName().toString().replaceFirst("\\.[^.]*$", "");
  }

  static double number(String token, int line) {
    try {
      double value = Double.parseDouble(token);
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // told below together with numbers that are not finite
    }
    throw new IllegalArgumentException("line " + line + ": \"" + token + "\" is not a number");
  }

  static int whole(String token, int line) {
    double value = number(token, line);
    if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
      throw new IllegalArgumentException(
          "line " + line + ": \"" + token + "\" is not a whole number");
    }
    return (int) value;
  }
}
