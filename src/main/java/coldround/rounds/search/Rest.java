package coldround.rounds.search;

/**
 * A break of a round. It is taken on arriving at a stop, before the service there, and is not
 * needed when the round is over by the last minute at which it could begin.
 *
 * @param minutes its length; 0 means no break
 * @param earliest first minute at which it may begin
 * @param latest last minute at which it may begin
 */
public record Rest(double minutes, double earliest, double latest) {

  /** No break. */
  public static final Rest NONE = new Rest(0, 0, 0);

  public Rest {
    if (!(minutes >= 0) || !(earliest <= latest)) {
      throw new IllegalArgumentException(
          "a break needs a length of 0 or more and an earliest start not after the latest: "
              + minutes
              + " min between "
              + earliest
              + " and "
              + latest);
    }
  }

  /** True if there is a break to take. */
  public boolean due() {
    return minutes > 0;
  }
}
