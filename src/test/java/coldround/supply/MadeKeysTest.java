package coldround.supply;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The step of the build that numbers keys anew, run as the build runs it, on jars made here. */
class MadeKeysTest {

  private static final LocalDateTime MADE = LocalDateTime.of(2026, 1, 1, 0, 0);

  @TempDir Path folder;

  /** Two classes that hand two values to each other; constants of every size between the keys. */
  private Path jar(String name, String first, String second) throws Exception {
    Path classes = Files.createDirectories(folder.resolve(name));
    Path giver = classes.resolve("Giver.java");
    Path taker = classes.resolve("Taker.java");
    Files.writeString(
        giver,
        """
        import java.util.Map;
        public class Giver {
          public static void give(Map<String, Object> context) {
            context.put("%s", 4611686018427387905L);
            Runnable later = () -> context.put("%s", 0.1);
            later.run();
          }
        }
        """
            .formatted(first, second));
    Files.writeString(
        taker,
        """
        import java.util.Map;
        public class Taker {
          public static String take(Map<String, Object> context) {
            return context.get("%s") + " then " + context.get("%s") + " Kälte \\0";
          }
        }
        """
            .formatted(second, first));
    int compiled =
        ToolProvider.getSystemJavaCompiler()
            .run(null, null, null, "-encoding", "UTF-8", giver.toString(), taker.toString());
    assertEquals(0, compiled);
    Path jar = folder.resolve(name + ".jar");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(jar))) {
      for (String entry : List.of("META-INF/", "Taker.class", "a.txt", "Giver.class")) {
        ZipEntry made = new ZipEntry(entry);
        made.setTimeLocal(MADE);
        out.putNextEntry(made);
        if (entry.endsWith(".class")) {
          out.write(Files.readAllBytes(classes.resolve(entry)));
        } else if (entry.endsWith(".txt")) {
          out.write("proxykey9".getBytes(StandardCharsets.UTF_8));
        }
        out.closeEntry();
      }
    }
    return jar;
  }

  private int exitOf(Path jar) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(java, "src/build/java/MadeKeys.java", jar.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("said").toFile())
            .start();
    return process.waitFor();
  }

  private String said() throws IOException {
    return Files.readString(folder.resolve("said"));
  }

  private void rename(Path jar) throws Exception {
    int exit = exitOf(jar);
    assertEquals(0, exit, said());
  }

  private static String taken(Path jar) throws Exception {
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {jar.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
      Map<String, Object> context = new HashMap<>();
      loader.loadClass("Giver").getMethod("give", Map.class).invoke(null, context);
      assertEquals(Set.of("proxykey1", "proxykey2"), context.keySet());
      return (String) loader.loadClass("Taker").getMethod("take", Map.class).invoke(null, context);
    }
  }

  @Test
  void jarsThatDifferInNumbersAloneAreTheSameAfterIt() throws Exception {
    Path one = jar("one", "proxykey7", "proxykey1024");
    Path other = jar("other", "proxykey12", "proxykey7");
    assertNotEquals(-1, Files.mismatch(one, other), "they differ before");
    rename(one);
    rename(other);
    assertEquals(-1, Files.mismatch(one, other));
    byte[] once = Files.readAllBytes(one);
    rename(one);
    assertArrayEquals(once, Files.readAllBytes(one), "a second time changes nothing");
  }

  @Test
  void whatOneClassGivesUnderAKeyTheOtherTakes() throws Exception {
    Path jar = jar("one", "proxykey7", "proxykey1024");
    rename(jar);
    assertEquals("0.1 then 4611686018427387905 Kälte \0", taken(jar));
    try (ZipFile file = new ZipFile(jar.toFile())) {
      assertEquals(
          List.of("META-INF/", "Taker.class", "a.txt", "Giver.class"),
          file.stream().map(ZipEntry::getName).toList());
      assertTrue(file.stream().allMatch(entry -> entry.getTimeLocal().equals(MADE)), "times");
      assertEquals(
          "proxykey9",
          new String(
              file.getInputStream(file.getEntry("a.txt")).readAllBytes(), StandardCharsets.UTF_8));
    }
  }

  @Test
  void aKeyWrittenOtherwiseEndsTheBuildAndLeavesTheJarAsItWas() throws Exception {
    Path jar = jar("odd", "proxykey7", "proxykey:Step:8");
    byte[] before = Files.readAllBytes(jar);
    assertNotEquals(0, exitOf(jar));
    assertTrue(said().contains("Giver.class") && said().contains("proxykey:Step:8"), said());
    assertArrayEquals(before, Files.readAllBytes(jar));
    try (Stream<Path> left = Files.list(folder)) {
      assertFalse(left.anyMatch(file -> file.toString().endsWith(".renamed")), "nothing is left");
    }
  }
}
