package coldround.access.edge;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The tables of docs/access.md: what each role may do with each operation and page. */
record RightsTable(Map<String, Map<String, String>> rights) {

  static final List<String> ROLES = List.of("planner", "technician", "customer", "scheduler");

  private static final Pattern ROW =
      Pattern.compile(
          "\\| `([^`]+)` \\| (all|own|no) \\| (all|own|no) \\| (all|own|no) \\| (all|own|no) \\|");

  static RightsTable read() throws IOException {
    Map<String, Map<String, String>> rights = new LinkedHashMap<>();
    for (String line : Files.readAllLines(Path.of("docs", "access.md"))) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        Map<String, String> byRole = new LinkedHashMap<>();
        for (int i = 0; i < ROLES.size(); i++) {
          byRole.put(ROLES.get(i), row.group(i + 2));
        }
        rights.put(row.group(1), byRole);
      }
    }
    return new RightsTable(rights);
  }

  String of(String what, String role) {
    Map<String, String> row = rights.get(what);
    if (row == null) {
      throw new AssertionError("docs/access.md says nothing of " + what);
    }
    return row.get(role);
  }
}
