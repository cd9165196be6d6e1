package coldround.intake;

/**
 * Which natural keys a file has had, on which line and with what content. Holds 64 bits of each key
 * and 32 of each content, so that a million rows take 32 MB; mistaking two keys for one would cost
 * a needless warning, no row.
 */
final class SeenKeys {

  private static final int FIRST_SIZE = 1 << 10;

  private long[] keys = new long[FIRST_SIZE];
  private int[] contents = new int[FIRST_SIZE];
  private int[] lines = new int[FIRST_SIZE];
  private int count;

  /**
   * Notes a row.
   *
   * @return line of the latest row with the same key and other content; 0 for none
   */
  long note(String key, int content, long line) {
    if (2 * count >= keys.length) {
      grow();
    }
    int place = place(hash(key));
    boolean seen = lines[place] != 0;
    long differs = seen && contents[place] != content ? lines[place] : 0;
    count += seen ? 0 : 1;
    keys[place] = hash(key);
    contents[place] = content;
    lines[place] = (int) Math.min(line, Integer.MAX_VALUE);
    return differs;
  }

  /** True for a key that was noted. */
  boolean has(String key) {
    return lines[place(hash(key))] != 0;
  }

  private int place(long hash) {
    int mask = keys.length - 1;
    int place = (int) hash & mask;
    while (lines[place] != 0 && keys[place] != hash) {
      place = (place + 1) & mask;
    }
    return place;
  }

  private void grow() {
    long[] oldKeys = keys;
    int[] oldContents = contents;
    int[] oldLines = lines;
    keys = new long[2 * oldKeys.length];
    contents = new int[keys.length];
    lines = new int[keys.length];
    for (int i = 0; i < oldKeys.length; i++) {
      if (oldLines[i] != 0) {
        int place = place(oldKeys[i]);
        keys[place] = oldKeys[i];
        contents[place] = oldContents[i];
        lines[place] = oldLines[i];
      }
    }
  }

  /** Spreads all characters over 64 bits (multiply and shift after each). */
  private static long hash(String key) {
    long hash = 0xCBF29CE484222325L;
    for (int i = 0; i < key.length(); i++) {
      hash = (hash ^ key.charAt(i)) * 0x9E3779B97F4A7C15L;
      hash ^= hash >>> 32;
    }
    return hash;
  }
}
