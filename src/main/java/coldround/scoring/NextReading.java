package coldround.scoring;

import coldround.reason.Reason;

/**
 * One piece of missing evidence and what having it would do.
 *
 * @param evidence stable name, such as condensing-split
 * @param reason what to read or enter, and why
 * @param rangePoints width of the range with it: best less worst score
 * @param narrowsBy points by which that is less than without it, above 0
 */
public record NextReading(String evidence, Reason reason, double rangePoints, double narrowsBy) {}
