package coldround.rounds.search.engine;

/** Random numbers that allocate nothing: xorshift64* of Vigna, seeded through splitmix64. */
final class Chance {

  /** Share of insertion places that a search overlooks; Christiaens and Vanden Berghe use 1 %. */
  private static final double BLINK_RATE = 0.01;

  private static final double LOG_NO_BLINK = Math.log1p(-BLINK_RATE);

  private long state;
  private int untilBlink;

  Chance(long seed) {
    long z = seed + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    state = (z ^ (z >>> 31)) | 1;
    rearm();
  }

  private long next() {
    state ^= state >>> 12;
    state ^= state << 25;
    state ^= state >>> 27;
    return state * 0x2545F4914F6CDD1DL;
  }

  /** Uniform in 0 up to, not including, 1. */
  double unit() {
    return (next() >>> 11) * 0x1.0p-53;
  }

  /** Uniform in 0 to bound - 1. */
  int below(int bound) {
    return (int) (((next() >>> 32) * bound) >>> 32);
  }

  /** Uniform in low to high, both included. */
  int between(int low, int high) {
    return low + below(high - low + 1);
  }

  /** True for about one call in a hundred; one comparison for the others. */
  boolean blink() {
    if (--untilBlink > 0) {
      return false;
    }
    rearm();
    return true;
  }

  private void rearm() {
    untilBlink = 1 + (int) (Math.log(1 - unit()) / LOG_NO_BLINK);
  }
}
