package coldround.rounds;

/** Who drives in which plan. */
public interface Turns {

  /** True where a plan that was told leads the technician somewhere. */
  boolean has(String planId, String technician);
}
