package coldround.intake.edge;

import coldround.http.Problem;
import coldround.intake.Profile;
import coldround.intake.Proposal;
import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What the headers of a file were taken for, and the profile that says so.
 *
 * @param columns by header, with the confidence of each
 * @param missing required columns that no header seems to mean
 * @param proposal can be mended, named and saved as it is
 */
record MappingView(
    List<Proposal.Guess> columns,
    List<String> missing,
    ProfileDocument proposal,
    @JsonIgnore Proposal made) {

  static MappingView of(Proposal proposal) {
    return new MappingView(
        proposal.guesses(), proposal.missing(), ProfileDocument.of(proposal.profile()), proposal);
  }

  /**
   * The proposed profile.
   *
   * @throws Problem when something must be asked
   */
  Profile sure() {
    if (made.isSure()) {
      return made.profile();
    }
    throw Problem.unprocessable("mapping-unsure", "It is not sure what the columns mean", detail())
        .telling("columns", columns)
        .telling("missing", missing)
        .telling("proposal", proposal);
  }

  private String detail() {
    String unsure =
        columns.stream()
            .filter(guess -> !guess.sure())
            .map(guess -> "'" + guess.header() + "'")
            .collect(Collectors.joining(", "));
    String asked =
        unsure.isEmpty() ? "" : " It is not sure what these headers mean: " + unsure + ".";
    String lacking =
        missing.isEmpty() ? "" : " No header seems to mean: " + String.join(", ", missing) + ".";
    return ("Nothing was applied.%s%s Mend the proposal, give it a name, save it by POST"
            + " /api/v1/profiles, and send the file again with that profile.")
        .formatted(asked, lacking);
  }
}
