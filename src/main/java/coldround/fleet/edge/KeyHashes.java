package coldround.fleet.edge;

/**
 * Which visits there may be: 64 bits of each key, so that a million take 16 to 32 MB. A key that is
 * not in here is new for certain; one that is in here has to be looked up.
 */
final class KeyHashes {

  private static final int FIRST_SIZE = 1 << 10;

  // zero marks a free place
  private long[] hashes = new long[FIRST_SIZE];
  private int count;

  void add(long unit, String number) {
    if (2 * count >= hashes.length) {
      grow();
    }
    put(hash(unit, number));
  }

  boolean mayHave(long unit, String number) {
    return hashes[place(hash(unit, number))] != 0;
  }

  private void put(long hash) {
    int place = place(hash);
    count += hashes[place] == 0 ? 1 : 0;
    hashes[place] = hash;
  }

  private int place(long hash) {
    int mask = hashes.length - 1;
    int place = (int) hash & mask;
    while (hashes[place] != 0 && hashes[place] != hash) {
      place = (place + 1) & mask;
    }
    return place;
  }

  private void grow() {
    long[] old = hashes;
    hashes = new long[2 * old.length];
    count = 0;
    for (long hash : old) {
      if (hash != 0) {
        put(hash);
      }
    }
  }

  /** Spreads unit and characters over 64 bits (multiply and shift after each). */
  private static long hash(long unit, String number) {
    long hash = mixed(0xCBF29CE484222325L, unit);
    for (int i = 0; i < number.length(); i++) {
      hash = mixed(hash, number.charAt(i));
    }
    return hash == 0 ? 1 : hash;
  }

  private static long mixed(long hash, long more) {
    long mixed = (hash ^ more) * 0x9E3779B97F4A7C15L;
    return mixed ^ mixed >>> 32;
  }
}
