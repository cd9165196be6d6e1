package coldround.feed;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/**
 * Changes that were made together, in few bytes: they say the same sentences of other units. Their
 * texts in UTF-8, each behind its length in four bytes, three texts a change, in the format of RFC
 * 1950.
 */
public final class PackedChanges {

  /** So many at most stand together: who wants one of them unpacks them all. */
  public static final int MOST = 64;

  /** No more are added to so many characters: a database has its limits for a cell. */
  private static final int MOST_CHARACTERS = 300_000;

  private PackedChanges() {}

  /** Those that are to stand together, in their order. */
  public static List<List<ChangeText>> together(List<ChangeText> changes) {
    List<List<ChangeText>> groups = new ArrayList<>();
    int first = 0;
    long characters = 0;
    for (int i = 0; i < changes.size(); i++) {
      if (i - first == MOST || characters >= MOST_CHARACTERS) {
        groups.add(changes.subList(first, i));
        first = i;
        characters = 0;
      }
      characters += changes.get(i).data().length();
    }
    if (first < changes.size()) {
      groups.add(changes.subList(first, changes.size()));
    }
    return groups;
  }

  public static byte[] pack(List<ChangeText> changes) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(8192);
    Deflater deflater = new Deflater(Deflater.BEST_SPEED);
    try (DataOutputStream out =
        new DataOutputStream(new DeflaterOutputStream(bytes, deflater, 8192))) {
      for (ChangeText change : changes) {
        write(out, change.type());
        write(out, change.subject());
        write(out, change.data());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  private static void write(DataOutputStream out, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  /**
   * @param count of the changes in it
   * @throws UncheckedIOException for bytes that are not of so many changes
   */
  public static List<ChangeText> unpack(byte[] packed, int count) {
    List<ChangeText> changes = new ArrayList<>(count);
    try (DataInputStream in =
        new DataInputStream(new InflaterInputStream(new ByteArrayInputStream(packed)))) {
      for (int i = 0; i < count; i++) {
        changes.add(new ChangeText(read(in), read(in), read(in)));
      }
      if (in.read() >= 0) {
        throw new IOException("more than " + count + " changes are packed");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return changes;
  }

  private static String read(DataInputStream in) throws IOException {
    int length = in.readInt();
    byte[] bytes = length < 0 ? new byte[0] : in.readNBytes(length);
    if (bytes.length != length) {
      throw new EOFException("a text of " + length + " bytes is not whole");
    }
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
