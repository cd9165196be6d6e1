package coldround.field;

import java.util.List;

/** The verdicts on a visit, gravest first, and the readings that none could be given on. */
public record Judgement(List<Verdict> verdicts, List<LeftOut> leftOut) {
  public Judgement {
    verdicts = List.copyOf(verdicts);
    leftOut = List.copyOf(leftOut);
  }
}
