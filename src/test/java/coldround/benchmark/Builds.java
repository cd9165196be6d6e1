package coldround.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.CRC32C;
import java.util.zip.ZipFile;

/** Which builds of the service programs need, looked for before any of them is run. */
final class Builds {

  /** Programs that start the service as it was built. */
  private static final Set<String> SERVED =
      Set.of("feed", "import", "reads", "rounds-service", "start", "visit");

  /** Those that compare it with its endpoint that gives bytes from memory. */
  private static final Set<String> BARE = Set.of("feed", "reads");

  private static final String BARE_CLASS = "coldround/bare/BareResource.class";

  private Builds() {}

  /**
   * What commands need.
   *
   * @return by kind of store whether its build must have the endpoint that gives bytes from memory
   */
  static TreeMap<Store.Kind, Boolean> needed(Collection<String> commands) {
    TreeMap<Store.Kind, Boolean> needed = new TreeMap<>();
    for (String command : commands) {
      String program = command.split(" ")[0];
      if (SERVED.contains(program)) {
        needed.merge(Store.Kind.in(command), BARE.contains(program), Boolean::logicalOr);
      }
    }
    return needed;
  }

  /**
   * @throws IllegalArgumentException when a build is not there that one of the commands needs, with
   *     what makes it
   */
  static void check(Collection<String> commands) throws IOException {
    List<String> missing = new ArrayList<>();
    for (var each : needed(commands).entrySet()) {
      Store.Kind kind = each.getKey();
      if (!Files.exists(kind.jar()) || each.getValue() && !hasBare(kind)) {
        missing.add("the service must first be built for " + kind + ":\n  " + kind.buildCommand());
      }
    }
    if (!missing.isEmpty()) {
      throw new IllegalArgumentException(String.join("\n", missing));
    }
  }

  /** What tells the classes of the service from those of another commit. */
  static String classes() throws IOException {
    Path folder = Path.of("target", "classes");
    CRC32C sum = new CRC32C();
    try (var files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        sum.update(folder.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
        sum.update(Files.readAllBytes(file));
      }
    }
    return Long.toHexString(sum.getValue());
  }

  private static boolean hasBare(Store.Kind kind) throws IOException {
    try (var files = Files.walk(kind.jar().getParent())) {
      for (Path jar : files.filter(Builds::isOurs).toList()) {
        try (ZipFile classes = new ZipFile(jar.toFile())) {
          if (classes.getEntry(BARE_CLASS) != null) {
            return true;
          }
        }
      }
    }
    return false;
  }

  /** Wherever the kind of package lays it. */
  private static boolean isOurs(Path file) {
    String name = file.getFileName().toString();
    return name.startsWith("coldround-") && name.endsWith(".jar");
  }
}
