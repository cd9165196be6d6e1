package coldround.scoring;

/**
 * Whether the faults of a unit come faster or slower with time.
 *
 * @param laplace Laplace statistic; above 0 means faster
 * @param shape power-law exponent (Crow–AMSAA, maximum likelihood, time-truncated); above 1 means
 *     faster
 * @param intensityPerYear fitted faults a year on the day of the assessment
 * @param expectedPerYear the same, held to what the last 12 months bear out: a power law through
 *     few faults runs far above what was ever seen
 * @param significance chance of a growth at least this strong with a constant rate (Military
 *     Handbook test)
 * @param worsening true when that chance is below its limit
 */
public record FaultTrend(
    double laplace,
    double shape,
    double intensityPerYear,
    double expectedPerYear,
    double significance,
    boolean worsening) {}
