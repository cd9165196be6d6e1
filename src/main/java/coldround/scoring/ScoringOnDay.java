package coldround.scoring;

import java.time.LocalDate;

/** Scoring as it could be done on a day: with priors from what was on record of the fleet then. */
public interface ScoringOnDay {

  /**
   * @param today day that it is at the site; from then on the priors in force hold
   */
  Scoring on(LocalDate day, LocalDate today);
}
