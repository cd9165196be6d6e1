import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Holds the files of two folders against each other, classes by their constants (JVMS 17, 4.4):
 * {@code java MadeClasses.java FIRST SECOND}. Tells of each file that has other bytes which of the
 * two known causes it has, and ends with 1 where there is another.
 */
public final class MadeClasses {

  /** Numbers that steps of the build give out as they come, whatever class they are for. */
  private static final String NUMBERED = "proxykey\\d+|configClass\\$\\d+";

  /** What two files of one name have to do with each other. */
  private enum Kind {
    SAME("the same bytes"),
    NUMBERS("other numbers of what is recorded, all else the same"),
    ORDER("the same constants in another order"),
    BOTH("other numbers and another order, the same constants"),
    OTHER("OTHER CONTENT");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  private MadeClasses() {}

  private static List<String> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).map(f -> folder.relativize(f).toString()).sorted().toList();
    }
  }

  /** Strings and numbers of a class in the order of its pool. */
  private static List<String> constants(byte[] bytes) throws IOException {
    List<String> found = new ArrayList<>();
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      in.skipNBytes(8);
      int count = in.readUnsignedShort();
      for (int i = 1; i < count; i++) {
        int tag = in.readUnsignedByte();
        switch (tag) {
          case 1 -> found.add("text " + in.readUTF());
          case 3 -> found.add("int " + in.readInt());
          case 4 -> found.add("float " + Integer.toHexString(in.readInt()));
          case 5, 6 -> {
            found.add((tag == 5 ? "long " : "double ") + Long.toHexString(in.readLong()));
            i++;
          }
          case 7, 8, 16, 19, 20 -> {
            found.add("kind " + tag);
            in.skipNBytes(2);
          }
          case 9, 10, 11, 12, 17, 18 -> {
            found.add("kind " + tag);
            in.skipNBytes(4);
          }
          case 15 -> {
            found.add("kind " + tag);
            in.skipNBytes(3);
          }
          default -> throw new IOException("constants of kind " + tag + " are not known");
        }
      }
    }
    return found;
  }

  private static List<String> sorted(List<String> constants, boolean numbers) {
    return constants.stream()
        .map(each -> numbers ? each : each.replaceAll(NUMBERED, "numbered"))
        .sorted()
        .toList();
  }

  private static Kind kind(String name, byte[] first, byte[] second) throws IOException {
    if (Arrays.equals(first, second)) {
      return Kind.SAME;
    }
    if (!name.endsWith(".class")) {
      return Kind.OTHER;
    }
    List<String> one = constants(first);
    List<String> other = constants(second);
    if (sorted(one, true).equals(sorted(other, true))) {
      return Kind.ORDER;
    }
    if (!sorted(one, false).equals(sorted(other, false))) {
      return Kind.OTHER;
    }
    boolean placed =
        String.join("\n", one).replaceAll(NUMBERED, "numbered")
            .equals(String.join("\n", other).replaceAll(NUMBERED, "numbered"));
    return placed ? Kind.NUMBERS : Kind.BOTH;
  }

  public static void main(String... folders) throws IOException {
    Path first = Path.of(folders[0]);
    Path second = Path.of(folders[1]);
    List<String> names = files(first);
    if (!names.equals(files(second))) {
      TreeSet<String> alone = new TreeSet<>(names);
      files(second).stream().filter(name -> !alone.remove(name)).toList().forEach(alone::add);
      System.err.println("made in one of both builds alone: " + alone);
      System.exit(1);
    }
    Map<Kind, List<String>> found = new TreeMap<>();
    for (String name : names) {
      byte[] one = Files.readAllBytes(first.resolve(name));
      byte[] other = Files.readAllBytes(second.resolve(name));
      found.computeIfAbsent(kind(name, one, other), kind -> new ArrayList<>()).add(name);
    }
    found.forEach(
        (kind, files) -> {
          System.out.printf("%d of %d: %s%n", files.size(), names.size(), kind.words);
          if (kind != Kind.SAME) {
            files.forEach(name -> System.out.println("  " + name));
          }
        });
    System.exit(found.containsKey(Kind.OTHER) ? 1 : 0);
  }
}
