package coldround.scoring.edge;

import coldround.scoring.FaultTallies;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringOnDay;
import coldround.scoring.ScoringRules;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;

/** Estimates the priors of a past day from the fault records as they stood on it. */
@ApplicationScoped
class StoredScoringOnDay implements ScoringOnDay {

  private final FaultTallies tallies;
  private final Scoring scoring;
  private final ScoringRules rules;

  @Inject
  StoredScoringOnDay(FaultTallies tallies, Scoring scoring, ScoringRules rules) {
    this.tallies = tallies;
    this.scoring = scoring;
    this.rules = rules;
  }

  @Override
  public Scoring on(LocalDate day, LocalDate today) {
    return day.isBefore(today)
        ? scoring.with(rules.faultPriors().estimated(tallies.sums(day), rules.limits()))
        : scoring;
  }
}
