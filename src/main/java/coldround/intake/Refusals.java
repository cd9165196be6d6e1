package coldround.intake;

/** Takes what is wrong with a cell while it is read. */
@FunctionalInterface
interface Refusals {
  void add(ProblemCode code, String message);
}
