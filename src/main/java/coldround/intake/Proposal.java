package coldround.intake;

import java.util.List;

/**
 * A profile guessed from the headers and cells of one file.
 *
 * @param profile with every guess in it, sure or not
 * @param guesses by header, in the order of the file
 * @param missing required columns that no header seems to mean
 */
public record Proposal(Profile profile, List<Guess> guesses, List<String> missing) {

  /**
   * What one header is taken for.
   *
   * @param column null for a header that means none
   * @param measure unit of measure as it will be read; empty for none
   * @param confidence 0 to 1
   * @param sure whether it may be taken without asking
   * @param candidates the likeliest columns, best first
   */
  public record Guess(
      String header,
      String column,
      String measure,
      double confidence,
      boolean sure,
      List<Candidate> candidates) {
    public Guess {
      candidates = List.copyOf(candidates);
    }
  }

  /** One column that a header may mean. */
  public record Candidate(String column, double confidence) {}

  public Proposal {
    guesses = List.copyOf(guesses);
    missing = List.copyOf(missing);
  }

  /** True when nothing needs to be asked. */
  public boolean isSure() {
    return missing.isEmpty() && guesses.stream().allMatch(Guess::sure);
  }
}
