package coldround.replacement.edge;

import coldround.replacement.Sensitivity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Says in one sentence or two what would have to be true for the answer to be another. */
final class Flips {

  private static final double HARDLY = 0.005;

  private Flips() {}

  static String sentence(List<Sensitivity> all) {
    List<String> told = new ArrayList<>();
    List<String> firm = new ArrayList<>();
    for (Sensitivity one : all) {
      List<String> at = new ArrayList<>();
      times(one.below(), "less").ifPresent(at::add);
      times(one.above(), "more").ifPresent(at::add);
      if (at.isEmpty()) {
        firm.add(one.assumption());
      } else {
        told.add(one.assumption() + " " + String.join(" or ", at));
      }
    }
    if (told.isEmpty()) {
      return "Its best year stays the same whichever of these is moved from a quarter to fourfold: "
          + list(firm)
          + ".";
    }
    return "Its best year would be another with "
        + String.join("; ", told)
        + "."
        + (firm.isEmpty()
            ? ""
            : " Moved from a quarter to fourfold, the " + list(firm) + " would not change it.");
  }

  private static java.util.Optional<String> times(OptionalDouble factor, String way) {
    if (factor.isEmpty()) {
      return java.util.Optional.empty();
    }
    boolean hardly = Math.abs(factor.getAsDouble() - 1) < HARDLY;
    return java.util.Optional.of(
        hardly
            ? "slightly " + way
            : String.format(Locale.ROOT, "%.2f times or %s", factor.getAsDouble(), way));
  }

  private static String list(List<String> words) {
    int last = words.size() - 1;
    return last == 0
        ? words.get(0)
        : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
  }
}
