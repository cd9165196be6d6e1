package coldround.pages;

import coldround.field.Judgement;
import coldround.field.LeftOut;
import coldround.field.Verdict;
import coldround.quantity.MeasureSystem;
import java.util.ArrayList;
import java.util.List;

/**
 * What is said of one reading at once, ready to be shown.
 *
 * @param quantity name of the reading, or voltage for the three together
 * @param of the same as a person says it
 * @param grade act, look, as-expected; left-out for what could not be judged
 * @param word the grade as a person says it
 */
public record VerdictView(String quantity, String of, String grade, String word, Told why) {

  /** Gravest first, what could not be judged last. */
  public static List<VerdictView> of(Judgement judgement, MeasureSystem system) {
    List<VerdictView> views = new ArrayList<>();
    judgement.verdicts().forEach(verdict -> views.add(of(verdict, system)));
    judgement.leftOut().forEach(leftOut -> views.add(of(leftOut, system)));
    return views;
  }

  private static VerdictView of(Verdict verdict, MeasureSystem system) {
    return new VerdictView(
        verdict.quantity(),
        named(verdict.quantity(), verdict.part()),
        verdict.grade().code(),
        word(verdict.grade()),
        Told.of(verdict.reason(), system));
  }

  private static VerdictView of(LeftOut leftOut, MeasureSystem system) {
    return new VerdictView(
        leftOut.quantity(),
        named(leftOut.quantity(), leftOut.part()),
        "left-out",
        "Not judged",
        Told.of(leftOut.reason(), system));
  }

  private static String named(String quantity, String part) {
    return Words.title(quantity) + (part.isEmpty() ? "" : ", " + part);
  }

  private static String word(Verdict.Grade grade) {
    return switch (grade) {
      case ACT -> "Act now";
      case LOOK -> "Look closer";
      case AS_EXPECTED -> "As expected";
    };
  }

  /** Where it is shown beside a field. */
  boolean speaksOf(String field) {
    return field.equals(quantity) || quantity.equals("voltage") && field.equals("voltage_l1_l3");
  }
}
