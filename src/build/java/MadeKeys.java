import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * {@code java MadeKeys.java JAR}: numbers the keys by which classes made at the build hand values to
 * each other ({@code proxykey246}) in the order in which they are met, by name of class and place in
 * its constants (JVMS 17, 4.4). The build gives these numbers out on several threads, so they are
 * others each time. A key stays one key in all classes of the jar; nothing else of it is changed.
 */
public final class MadeKeys {

  private static final String KEY = "proxykey";
  private static final int CLASS_FILE = 0xCAFEBABE;

  private final Map<String, String> names = new HashMap<>();

  private MadeKeys() {}

  private String named(String text) throws IOException {
    if (!text.contains(KEY)) {
      return text;
    }
    if (!text.matches(KEY + "\\d+")) {
      throw new IOException("a key that would not be renamed with the others: " + text);
    }
    return names.computeIfAbsent(text, key -> KEY + (names.size() + 1));
  }

  private byte[] renamed(byte[] bytes) throws IOException {
    ByteArrayOutputStream result = new ByteArrayOutputStream(bytes.length);
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes));
    DataOutputStream out = new DataOutputStream(result);
    if (in.readInt() != CLASS_FILE) {
      throw new IOException("not a class file");
    }
    out.writeInt(CLASS_FILE);
    out.write(in.readNBytes(4));
    int count = in.readUnsignedShort();
    out.writeShort(count);
    for (int i = 1; i < count; i++) {
      int tag = in.readUnsignedByte();
      out.writeByte(tag);
      switch (tag) {
        case 1 -> out.writeUTF(named(in.readUTF()));
        case 7, 8, 16, 19, 20 -> copy(in, out, 2);
        case 15 -> copy(in, out, 3);
        case 3, 4, 9, 10, 11, 12, 17, 18 -> copy(in, out, 4);
        case 5, 6 -> {
          copy(in, out, 8);
          // takes the place of two
          i++;
        }
        default -> throw new IOException("constants of kind " + tag + " are not known");
      }
    }
    in.transferTo(out);
    return result.toByteArray();
  }

  private static void copy(DataInputStream in, DataOutputStream out, int bytes) throws IOException {
    byte[] read = in.readNBytes(bytes);
    if (read.length < bytes) {
      throw new IOException("ends within its constants");
    }
    out.write(read);
  }

  private Map<String, byte[]> classes(ZipFile jar) throws IOException {
    List<? extends ZipEntry> sorted =
        jar.stream()
            .filter(entry -> entry.getName().endsWith(".class"))
            .sorted(Comparator.comparing(ZipEntry::getName))
            .toList();
    Map<String, byte[]> classes = new HashMap<>();
    for (ZipEntry entry : sorted) {
      try {
        classes.put(entry.getName(), renamed(jar.getInputStream(entry).readAllBytes()));
      } catch (IOException e) {
        throw new IOException(jar.getName() + ", " + entry.getName() + ": " + e.getMessage(), e);
      }
    }
    return classes;
  }

  private void rename(Path jar) throws IOException {
    Path written = jar.resolveSibling(jar.getFileName() + ".renamed");
    try (ZipFile in = new ZipFile(jar.toFile())) {
      Map<String, byte[]> classes = classes(in);
      try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(written))) {
        for (ZipEntry entry : in.stream().toList()) {
          // with its times as they stand there, whatever the time zone
          ZipEntry copy = new ZipEntry(entry);
          copy.setCompressedSize(-1);
          out.putNextEntry(copy);
          byte[] renamed = classes.get(entry.getName());
          out.write(renamed != null ? renamed : in.getInputStream(entry).readAllBytes());
          out.closeEntry();
        }
      }
    }
    Files.move(written, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  public static void main(String... jars) throws IOException {
    new MadeKeys().rename(Path.of(jars[0]));
  }
}
