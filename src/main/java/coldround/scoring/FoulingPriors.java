package coldround.scoring;

import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.reason.Source;
import coldround.scoring.statistics.Shrinkage;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;

/** How fast coils foul in what surroundings: scoring/fouling-priors.csv. */
public final class FoulingPriors {

  private static final String FILE = "fouling-priors.csv";
  private static final String UNKNOWN = "unknown";

  /**
   * @param kPerDay growth of the split's excess
   */
  record FoulingPrior(String surroundings, Shrinkage kPerDay, Source source) {}

  private final Map<String, FoulingPrior> bySurroundings = new HashMap<>();

  private FoulingPriors() {}

  public static FoulingPriors load(RuleTables tables) {
    FoulingPriors priors = new FoulingPriors();
    tables
        .read(FILE, "surroundings", FoulingPriors::prior)
        .forEach(prior -> priors.bySurroundings.put(prior.surroundings, prior));
    if (!priors.bySurroundings.containsKey(UNKNOWN)) {
      tables.problem(FILE, 0, "surroundings", "the row 'unknown' is missing");
    }
    return priors;
  }

  private static FoulingPrior prior(TableRow row) {
    Measure measure = Cells.measure(row, "measure", Dimension.TEMPERATURE_DIFFERENCE);
    double days = row.number("days", 1, 10_000);
    double rise = measure.toBase(row.number("rise", 0, 1000)) / days;
    double sd = measure.toBase(row.number("sd", 1e-6, 1000)) / days;
    return new FoulingPrior(row.required("surroundings"), new Shrinkage(rise, sd), row.source());
  }

  FoulingPrior of(String surroundings) {
    FoulingPrior prior = bySurroundings.get(surroundings);
    return prior != null ? prior : bySurroundings.get(UNKNOWN);
  }
}
